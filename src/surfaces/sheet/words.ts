import { setTranslationMethod } from '@odoo/o-spreadsheet';

/** Sentences of the grid library that are not true of this page, and what is. */
const instead: Readonly<Record<string, string>> = {
  'An unexpected error occurred. Submit a support ticket at odoo.com/help.': 'This function stopped on a fault, not on your figures.',
  'Those settings affect all users.': 'Numbers and dates are shown and typed in this way on every sheet of this workbook.',
  // What goes on to the browser's own print dialogue.
  Next: 'Print…',
  "e.g. 'http://www.odoo.com'": 'e.g. https://example.org',
};

export const inOurWords = (sentence: string): string => instead[sentence.trim()] ?? sentence;

export const speakOurWords = (): void => setTranslationMethod((...said) => inOurWords(said[0]));
