import { createHash } from 'node:crypto';
import { type Family, families } from './families.ts';
import { Html, html } from './html.ts';
import { pageOf } from './words.ts';

export interface Page {
  readonly file: string;
  readonly title: string;
  readonly body: Html;
}

const places: readonly (readonly [file: string, title: string])[] = [
  ['index.html', 'Contents'],
  ...(Object.keys(families) as Family[]).map((family) => [pageOf(family), family.charAt(0) + family.slice(1).toLowerCase()] as const),
  ['method.html', 'Method note'],
  ['sources.html', 'Sources'],
];

/** A page that stands alone: its style inside it, nothing fetched, no script. */
export function wholePage({ file, title, body }: Page, style: string): string {
  const policy = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'; base-uri 'none'; form-action 'none'`;
  const links = places.map(
    ([place, name]) => html`<li><a href="${place}"${place === file ? new Html(' aria-current="page"') : ''}>${name}</a></li>
`,
  );
  return html`<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${title} – Bedding Ledger</title>
<style>${new Html(style)}</style>
</head>
<body>
<header><nav aria-label="Pages"><ul>
${links}</ul></nav></header>
<main>
<h1>${title}</h1>
${body}</main>
<footer><p>Bedding Ledger, made by its build from the records that the functions themselves are made of. A planning aid: it takes no decision for you. Local codes, the authority, your vet, engineer and accountant come first.</p></footer>
</body>
</html>
`.markup;
}
