import { registries } from '@odoo/o-spreadsheet';

const withScheme = (url: string): string => (/^https?:\/\//i.test(url) ? url : `https://${url}`);

/** A link in a cell opens a page that cannot reach back to this one: the grid's own way hands it `window.opener`. */
export function openLinksApart(): void {
  const { urlRegistry } = registries;
  urlRegistry.add('web', {
    match: () => true,
    createLink: (url, label) => ({ url: withScheme(url), label: label || withScheme(url), isExternal: true, isUrlEditable: true }),
    urlRepresentation: (url) => url,
    open: (url) => void window.open(url, '_blank', 'noopener,noreferrer'),
    title: 'Web',
    // Behind the links to sheets, which it would take too.
    sequence: Number.MAX_SAFE_INTEGER,
  });
}
