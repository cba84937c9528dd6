import { html, nothing, type TemplateResult } from 'lit-html';
import { call } from '../../core/call.ts';
import { type Parameter, REFUSED } from '../../core/parameters.ts';
import { CellError } from '../../core/result.ts';
import { refusal } from '../../core/words.ts';
import type { Pane, Part, Why } from './context.ts';
import { field } from './field.ts';
import { literal } from './formula.ts';
import { type Inputs, itemByKey, readInputsSheet } from './inputs-sheet.ts';
import type { InputsWriter } from './inputs-writer.ts';
import { readIn, sayValue, showIn } from './numbers.ts';
import { allReadings, type Block, blocks, type Finding, type Reading } from './read-through-blocks.ts';
import { namespace, recordOf } from './records.ts';

const byId = new Map(allReadings.map((reading) => [reading.id, reading]));

const readingOf = (id: string): Reading => byId.get(id) as Reading;

const parameterOf = ({ id, of, argument = id }: Reading): Parameter =>
  recordOf(of).parameters.find(({ name }) => name === argument) as Parameter;

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const labelOf = (reading: Reading): string => reading.label ?? sentence(parameterOf(reading).says);

/** The settings and gauges of a plant that is running, turned into what they mean. */
export function readings(pane: Pane, writer: InputsWriter): Part {
  const typed = new Map<string, string>();
  let inputs: Inputs | undefined;

  async function refresh(why: Why): Promise<void> {
    if (why === 'selection') return;
    inputs = await readInputsSheet(pane.host);
    pane.redraw();
  }

  /** What was typed here, else what the survey holds. */
  function textOf(reading: Reading): string {
    const held = reading.item && inputs?.get(itemByKey(reading.item))?.cell.value;
    const fromSurvey = typeof held === 'number' ? showIn(parameterOf(reading).unit, held, pane.host.locale()) : '';
    return typed.get(reading.id) ?? fromSurvey;
  }

  function valueRead(reading: Reading): { readonly value?: number; readonly problem?: string } {
    const text = textOf(reading);
    if (text.trim() === '') return {};
    const parameter = parameterOf(reading);
    const value = readIn(parameter.unit, text, pane.host.locale());
    return value === undefined || parameter.read(value) === REFUSED ? { problem: refusal(parameter, value ?? text) } : { value };
  }

  function readingField(block: Block, id: string): TemplateResult {
    const reading = readingOf(id);
    const { unit } = parameterOf(reading);
    const { problem } = valueRead(reading);
    const enter = (text: string) => {
      if (text.trim() === '') typed.delete(id);
      else typed.set(id, text);
      pane.redraw();
    };
    return field({
      id: `reading-${blocks.indexOf(block)}-${id.replaceAll('_', '-')}`,
      label: labelOf(reading),
      unit: unit === 'fraction' ? '%' : unit,
      text: textOf(reading),
      enter,
      ...(problem !== undefined && { problem }),
    });
  }

  function toSurvey({ item, says }: Finding, value: number): TemplateResult | typeof nothing {
    if (!item || !inputs) return nothing;
    const { name } = itemByKey(item);
    return html`<button type="button" @click=${() => pane.act(() => writer.put([[itemByKey(item), value]]))}>Put into the survey<span class="unseen">: ${says} as ${name}</span></button>`;
  }

  function finding(of: Finding): TemplateResult {
    const given = of.args.map((id) => (id === null ? null : valueRead(readingOf(id))));
    const lacking = of.args
      .filter((id, k) => id !== null && given[k]?.value === undefined)
      .map((id) => labelOf(readingOf(id as string)).toLowerCase());
    if (lacking.length > 0) return html`<p class="hint">${of.says}: needs ${lacking.join(', ')}.</p>`;
    const record = recordOf(of.of);
    const values = given.map((one) => one?.value ?? null);
    const answer = call(record, values)[0]?.[0];
    if (answer instanceof CellError) return html`<p class="problem">${of.says}: ${answer.message}</p>`;
    const value = Number(answer);
    return html`<div class="finding">
      <p><strong>${of.says}: ${sayValue(value, record.working[record.result]?.unit ?? '', pane.host.locale())}</strong> ${of.verdict?.(value) ?? ''}</p>
      <p class="hint"><code>=${namespace}${record.name}(${values.map((one) => (one === null ? '' : literal(one))).join(', ')})</code></p>
      ${toSurvey(of, value)}
    </div>`;
  }

  const view = (): TemplateResult => html`
    <p class="lead">Read the settings and gauges of a press and dryer that are running: here is what they mean. Figures that the survey holds are filled in.</p>
    ${blocks.map(
      (block, k) => html`<details ?open=${k === 0}>
        <summary>${block.title}</summary>
        ${block.readings.map((id) => readingField(block, id))}
        <div aria-live="polite">${block.findings.map(finding)}</div>
      </details>`,
    )}`;

  return { title: 'Readings', view, refresh };
}
