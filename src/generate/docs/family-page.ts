import type { FunctionRecord } from '../../core/define.ts';
import { type Family, families } from './families.ts';
import { familyExtras } from './family-extras.ts';
import { functionSection } from './function-section.ts';
import { html } from './html.ts';
import type { Page } from './page.ts';
import { anchorOf, pageOf } from './words.ts';

/** One page for a family: contents, every function, then what the functions draw on. */
export function familyPage(family: Family, records: readonly FunctionRecord[]): Page {
  const { title, about } = families[family];
  const extras = familyExtras[family]?.() ?? [];
  const body = html`<p class="lead">${about}</p>
<ul>
${records.map(
  ({ name, summary }) => html`<li><a href="#${anchorOf(name)}"><code>${name}</code></a> ${summary}</li>
`,
)}${extras.map(
  ({ id, title }) => html`<li><a href="#${id}">${title}</a></li>
`,
)}</ul>
${records.map(functionSection)}${extras.map(
  ({ id, title, body }) => html`<section id="${id}">
<h2>${title}</h2>
${body}</section>
`,
)}`;
  return { file: pageOf(family), title, body };
}
