import type { Format, Rule, SheetCell, Style } from './model.ts';

/** How a cell looks, the same in every host. Sizes in points. */
export interface Look {
  readonly bold?: true;
  readonly fontSize?: number;
  readonly textColor?: string;
  readonly fillColor?: string;
}

type Edges = Readonly<Partial<Record<'top' | 'bottom' | 'left' | 'right', { readonly style: 'thin'; readonly color: string }>>>;

const ink = '#1f2a24';
const line = '#9aa89f';

/** Every pair of text and fill here keeps a contrast of at least 4.5. */
export const styles: Readonly<Record<Style, Look>> = {
  title: { bold: true, fontSize: 18, textColor: '#1f4d38' },
  lead: { fontSize: 11, textColor: ink },
  section: { bold: true, fontSize: 12, textColor: '#1f4d38', fillColor: '#e6efe9' },
  heading: { bold: true, textColor: ink, fillColor: '#e6efe9' },
  label: { textColor: ink },
  input: { textColor: '#1f3f8f', fillColor: '#fffbe8' },
  required: { bold: true, textColor: '#1f3f8f', fillColor: '#fff3c4' },
  output: { textColor: ink },
  strong: { bold: true, fontSize: 12, textColor: ink },
  note: { fontSize: 9, textColor: '#55615a' },
  warning: { textColor: '#7a2a0b', fillColor: '#fdeee6' },
  check: { bold: true, textColor: ink },
};

const thin = { style: 'thin', color: line } as const;

export const borders: Readonly<Partial<Record<Style, Edges>>> = {
  heading: { bottom: thin },
  input: { top: thin, bottom: thin, left: thin, right: thin },
  required: { top: thin, bottom: thin, left: thin, right: thin },
};

const formats: Readonly<Record<Format, string | undefined>> = {
  general: undefined,
  text: '@',
  whole: '#,##0',
  one: '#,##0.0',
  two: '#,##0.00',
  three: '#,##0.000',
  percent: '0%',
  percent1: '0.0%',
  money: '#,##0',
  money2: '#,##0.00',
  date: 'dd/mm/yyyy',
};

export const looks: Readonly<Record<Rule['look'], Look>> = {
  good: { textColor: '#14532d', fillColor: '#dff0e3' },
  watch: { textColor: '#5f4300', fillColor: '#fff1cc' },
  bad: { textColor: '#7f1d1d', fillColor: '#fbe0dc', bold: true },
  quiet: { textColor: '#5f6b64' },
};

/** Told apart by lightness too, for print in grey and for colour-blind readers. */
export const seriesColours = ['#1f4d38', '#d08a2e', '#6f9fc4', '#a33b2a', '#b8b8a8', '#5b4a7d'] as const;

/**
 * Words stay words, so that an answer such as `1/2` does not become a date. An empty cell is no words yet: as text it
 * would keep the number typed there as text, and no formula would count it.
 */
export function numberFormatOf({ format, content }: SheetCell): string | undefined {
  if (format) return formats[format];
  return typeof content === 'string' && content !== '' && !content.startsWith('=') ? formats.text : undefined;
}
