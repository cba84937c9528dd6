import { registries } from '@odoo/o-spreadsheet';
import { functionsFile } from '../../core/metadata.ts';
import { registry } from '../../functions/index.ts';
import { inLocale } from '../in-locale.ts';
import { prefix } from '../namespace.ts';

/** As installCustomFunctions writes it. */
let written = 'en-GB';

/** What the grid says of our functions while a formula is typed, with numbers as the locale writes them. */
export function writeHelpIn(locale: string): void {
  if (locale === written) return;
  written = locale;
  for (const { name, description, parameters } of functionsFile(registry).functions) {
    const known = registries.functionRegistry.get(`${prefix}${name}`);
    known.description = inLocale(description, locale);
    for (const [k, parameter] of parameters.entries()) {
      Object.assign(known.args[k] ?? {}, { description: inLocale(parameter.description, locale) });
    }
  }
}
