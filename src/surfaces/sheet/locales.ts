import type { Locale } from '@odoo/o-spreadsheet';

const english = {
  thousandsSeparator: ',',
  decimalSeparator: '.',
  formulaArgSeparator: ',',
  dateFormat: 'dd/mm/yyyy',
  timeFormat: 'hh:mm:ss',
};

/** `de-DE` of the grid's `de_DE`: how the browser knows a locale (BCP 47). */
export const bcp47 = ({ code }: Locale): string => code.replace('_', '-');

/** How numbers, dates and formulas are typed and shown; the grid keeps what it stores the same for all of them. */
export const locales: readonly [Locale, ...Locale[]] = [
  { ...english, name: 'English (UK)', code: 'en_GB', weekStart: 1 },
  { ...english, name: 'English (Ireland)', code: 'en_IE', weekStart: 1 },
  {
    name: 'Deutsch',
    code: 'de_DE',
    thousandsSeparator: '.',
    decimalSeparator: ',',
    weekStart: 1,
    dateFormat: 'dd.mm.yyyy',
    timeFormat: 'hh:mm:ss',
    formulaArgSeparator: ';',
  },
  {
    name: 'Français',
    code: 'fr_FR',
    thousandsSeparator: ' ',
    decimalSeparator: ',',
    weekStart: 1,
    dateFormat: 'dd/mm/yyyy',
    timeFormat: 'hh:mm:ss',
    formulaArgSeparator: ';',
  },
];
