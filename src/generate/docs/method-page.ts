import { html } from './html.ts';
import { airSections } from './method/air.ts';
import { balanceSections } from './method/balances.ts';
import type { Paragraph, Section } from './method/figures.ts';
import { limitSections } from './method/limits.ts';
import { moneySections } from './method/money.ts';
import { scoreSections } from './method/score.ts';
import type { Page } from './page.ts';

const methodSections: readonly Section[] = [...balanceSections, ...airSections, ...scoreSections, ...moneySections, ...limitSections];

function paragraph(text: Paragraph, number: string) {
  const [first, ...tables] = Array.isArray(text) ? text : [text];
  const anchor = `p${number.replace('.', '-')}`;
  return html`<div class="numbered" id="${anchor}"><a class="number" href="#${anchor}">${number}</a>
<p>${first}</p>
${tables}</div>
`;
}

export const methodPage = (): Page => ({
  file: 'method.html',
  title: 'Method note',
  body: html`<p class="lead">How the answers come about, what speaks against them, and what is not known. Every paragraph has a number, so that a vet, an engineer or an accountant can say which one is wrong.</p>
<ol class="contents">
${methodSections.map(
  ({ id, title }) => html`<li><a href="#${id}">${title}</a></li>
`,
)}</ol>
${methodSections.map(
  ({ id, title, paragraphs }, k) => html`<section id="${id}">
<h2>${k + 1} ${title}</h2>
${paragraphs.map((text, n) => paragraph(text, `${k + 1}.${n + 1}`))}</section>
`,
)}`,
});
