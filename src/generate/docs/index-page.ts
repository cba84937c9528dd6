import type { FunctionRecord } from '../../core/define.ts';
import { type Family, families, familyOf } from './families.ts';
import { html } from './html.ts';
import type { Page } from './page.ts';
import { statusTable } from './sources-page.ts';
import { anchorOf, functionLink, pageOf } from './words.ts';

export const indexPage = (records: readonly FunctionRecord[]): Page => ({
  file: 'index.html',
  title: 'Reference of Bedding Ledger',
  body: html`<p class="lead">Will cubicle bedding made from the herd’s own slurry work, and will it pay? These ${records.length} functions answer it step by step, and show on whose word each step rests.</p>
<p>In a cell, <code>=BEDDING.WORKING("DRYING.WATER", 100, 0.3, 0.9)</code> shows how <a href="drying.html#${anchorOf('DRYING.WATER')}">DRYING.WATER</a> comes to its answer; so with every function. What is behind the whole, and what can be said against it, is in the <a href="method.html">method note</a>, paragraph by paragraph. Every figure’s origin is in <a href="sources.html">sources</a>.</p>
<p>Fractions are fractions: 35 % dry matter is 0.35, or a cell formatted 35 %. An error says what is wrong and what would be right.</p>
${(Object.keys(families) as Family[]).map(
  (family) => html`<section>
<h2><a href="${pageOf(family)}">${families[family].title}</a></h2>
<p>${families[family].about}</p>
<ul>
${records
  .filter(({ name }) => familyOf(name) === family)
  .map(
    ({ name, summary }) => html`<li>${functionLink(name)} ${summary}</li>
`,
  )}</ul>
</section>
`,
)}
<section>
<h2>How far to trust a figure</h2>
${statusTable()}
</section>
`,
});
