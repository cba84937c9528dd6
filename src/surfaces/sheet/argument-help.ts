import { registries } from '@odoo/o-spreadsheet';
import { describe } from '../../core/words.ts';
import { registry } from '../../functions/index.ts';
import { inLocale } from '../in-locale.ts';
import { prefix } from '../namespace.ts';

let written = '';

/** What the grid says of our functions while a formula is typed, with numbers as the locale writes them. */
export function writeHelpIn(locale: string): void {
  if (locale === written) return;
  written = locale;
  for (const { name, summary, parameters } of registry) {
    const known = registries.functionRegistry.get(`${prefix}${name}`);
    known.description = inLocale(summary, locale);
    for (const [k, parameter] of parameters.entries()) {
      Object.assign(known.args[k] ?? {}, { description: inLocale(describe(parameter), locale) });
    }
  }
}
