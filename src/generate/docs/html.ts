/** Text that is already markup; everything else is escaped where it enters a page. */
export class Html {
  readonly markup: string;

  constructor(markup: string) {
    this.markup = markup;
  }
}

export type Part = Html | string | number | undefined | readonly Part[];

const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function markupOf(part: Part): string {
  if (part instanceof Html) return part.markup;
  if (Array.isArray(part)) return part.map(markupOf).join('');
  return part === undefined ? '' : String(part).replace(/[&<>"]/g, (sign) => entities[sign] as string);
}

/** A template of markup; what is put into it is escaped unless it is markup itself. */
export const html = (strings: TemplateStringsArray, ...parts: readonly Part[]): Html =>
  new Html(strings.reduce((made, string, k) => made + markupOf(parts[k - 1]) + string));

export const joined = (parts: readonly Part[], between: string): Part => parts.flatMap((part, k) => (k === 0 ? [part] : [between, part]));

/** A table with a caption for those who hear it; the first column heads its rows. */
export const table = (caption: string, columns: readonly string[], rows: readonly (readonly Part[])[]): Html => html`<table>
<caption>${caption}</caption>
<thead><tr>${columns.map((column) => html`<th scope="col">${column}</th>`)}</tr></thead>
<tbody>
${rows.map(
  ([first, ...rest]) => html`<tr><th scope="row">${first}</th>${rest.map((cell) => html`<td>${cell}</td>`)}</tr>
`,
)}</tbody>
</table>
`;
