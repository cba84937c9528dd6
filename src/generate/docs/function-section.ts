import { referenceOf } from '../../core/bibliography.ts';
import type { FunctionRecord } from '../../core/define.ts';
import type { Parameter } from '../../core/parameters.ts';
import { workedExample } from './example.ts';
import { type Html, html, joined, table } from './html.ts';
import { anchorOf, cited, equation, formulaName, leftOut, status, stepAnchor, unitWord } from './words.ts';

const argumentRow = ({ name, says, unit, accepts, fallback, repeating }: Parameter) => [
  html`<code>${name}</code>`,
  repeating ? `${says}; any number of them` : says,
  unitWord(unit),
  accepts,
  leftOut(fallback),
];

function argumentsTable({ name, parameters }: FunctionRecord): Html {
  if (parameters.length === 0) return html`<p>Takes no arguments.</p>`;
  return table(`Arguments of ${name}, in this order`, ['Argument', 'What it is', 'Unit', 'Enter', 'Left out'], parameters.map(argumentRow));
}

/** The steps with the answer last, as WORKING lists them. */
function workingTable({ name, working, result }: FunctionRecord): Html | '' {
  const steps = Object.entries(working).sort(([a], [b]) => Number(a === result) - Number(b === result));
  if (steps.length === 0) return '';
  const rows = steps.map(([step, line]) => [
    html`<span id="${stepAnchor(name, step)}">${line.says}</span>`,
    equation(step, line),
    unitWord(line.unit),
    line.source ? cited(line.source) : '',
  ]);
  return table(`Working of ${name}`, ['Step', 'Equation', 'Unit', 'Source'], rows);
}

const keepInMind = ({ notes = [] }: FunctionRecord): Html | '' =>
  notes.length === 0
    ? ''
    : html`<h3>Keep in mind</h3>
<ul>
${notes.map(
  (note) => html`<li>${note}</li>
`,
)}</ul>
`;

function givesBack({ columns, working, result, parameters }: FunctionRecord): Html {
  if (columns)
    return html`<p>Gives a table with the columns ${joined(
      columns.map((column) => html`<i>${column}</i>`),
      ', ',
    )}.</p>`;
  const unit = unitWord(working[result]?.unit ?? '');
  return html`<p>Gives <code>${result}</code>${unit ? ` in ${unit}` : ''}.${parameters.length > 0 ? ' Every argument may be a range; the answers then spill.' : ''}</p>`;
}

const optionalInBrackets = ({ name, fallback, repeating }: Parameter): string => (repeating ? `${name}…` : fallback ? `[${name}]` : name);

/** Everything the reference says of one function, made from its record alone. */
export const functionSection = (record: FunctionRecord): Html => html`<section id="${anchorOf(record.name)}">
<h2>${record.name}</h2>
<p class="lead">${record.summary}</p>
<p class="call"><code>${formulaName(record)}(${record.parameters.map(optionalInBrackets).join(', ')})</code></p>
${givesBack(record)}
${argumentsTable(record)}
${workingTable(record)}
${keepInMind(record)}<h3>Worked ${record.examples.length === 1 ? 'example' : 'examples'}</h3>
${record.examples.map((example) => workedExample(record, example))}
<h3>Sources</h3>
<ul>
${record.sources.map(
  (id) => html`<li><a href="sources.html#${id}">${referenceOf(id).reference}</a> (${status(referenceOf(id).status)})</li>
`,
)}</ul>
</section>
`;
