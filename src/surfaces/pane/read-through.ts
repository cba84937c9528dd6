import { html, nothing, type TemplateResult } from 'lit-html';
import { type BudgetItem, itemOf } from '../../budget/items.ts';
import { call } from '../../core/call.ts';
import { type Parameter, REFUSED } from '../../core/parameters.ts';
import { CellError } from '../../core/result.ts';
import { refusal } from '../../core/words.ts';
import { inLocale } from '../in-locale.ts';
import { prefix } from '../namespace.ts';
import type { Pane, Part, Why } from './context.ts';
import { field } from './field.ts';
import { literal } from './formula.ts';
import { type Inputs, readInputsSheet } from './inputs-sheet.ts';
import type { InputsWriter } from './inputs-writer.ts';
import { readIn, sayValue, showIn } from './numbers.ts';
import { type Plan, planOf } from './plan.ts';
import { allReadings, type Block, blocks, type Finding, type Reading } from './read-through-blocks.ts';
import { recordOf } from './records.ts';

const byId = new Map(allReadings.map((reading) => [reading.id, reading]));

const readingOf = (id: string): Reading => byId.get(id) as Reading;

const parameterOf = ({ id, of, argument = id }: Reading): Parameter =>
  recordOf(of).parameters.find(({ name }) => name === argument) as Parameter;

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

const labelOf = (reading: Reading): string => reading.label ?? sentence(parameterOf(reading).says);

/** The settings and gauges of a plant that is running, turned into what they mean. */
export function readings(pane: Pane, writer: InputsWriter): Part {
  const ours = (words: string): string => inLocale(words, pane.host.locale());
  const typed = new Map<string, string>();
  let inputs: Inputs | undefined;
  let plan: Plan | undefined;

  async function refresh(why: Why): Promise<void> {
    if (why === 'selection') return;
    inputs = await readInputsSheet(pane.host);
    plan = inputs && planOf(inputs, pane.host.locale());
    pane.redraw();
  }

  /** What was typed here, else what the survey holds, else what the budget works out. */
  function textOf(reading: Reading): string {
    const { id, item, result } = reading;
    const worked = result && plan?.results.get(result)?.value;
    const held = item ? inputs?.get(itemOf(item))?.cell.value : typeof worked === 'number' ? Number(worked.toPrecision(4)) : worked;
    const found = typeof held === 'number' ? showIn(parameterOf(reading).unit, held, pane.host.locale()) : '';
    return typed.get(id) ?? found;
  }

  function valueRead(reading: Reading): { readonly value?: number; readonly problem?: string } {
    const text = textOf(reading);
    if (text.trim() === '') return {};
    const parameter = parameterOf(reading);
    const value = readIn(parameter.unit, text, pane.host.locale());
    return value === undefined || parameter.read(value) === REFUSED ? { problem: ours(refusal(parameter, value ?? text)) } : { value };
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

  function toSurvey(values: readonly (readonly [BudgetItem, number])[], words: string, of: string): TemplateResult | typeof nothing {
    if (!inputs) return nothing;
    return html`<div class="buttons">
      <button type="button" class="quiet" @click=${() => pane.act(() => writer.put(values))}>${words}<span class="unseen">${of}</span></button>
    </div>`;
  }

  function finding({ says, of, args, item, verdict }: Finding): TemplateResult {
    const lacking = args.flat().filter((id) => valueRead(readingOf(id)).value === undefined);
    if (lacking.length > 0) {
      const words = lacking.map((id) => labelOf(readingOf(id)).toLowerCase());
      return html`<p class="hint">${says}: needs ${words.join(', ')}.</p>`;
    }
    const factors = args.map((ids) => [ids].flat().map((id) => valueRead(readingOf(id)).value ?? 0));
    const record = recordOf(of);
    const answer = call(
      record,
      factors.map((values) => values.reduce((product, one) => product * one, 1)),
    )[0]?.[0];
    if (answer instanceof CellError) return html`<p class="problem">${says}: ${ours(answer.message)}</p>`;
    const value = Number(answer);
    return html`<div class="finding">
      <p><strong>${says}: ${sayValue(value, record.working[record.result]?.unit ?? '', pane.host.locale())}</strong> ${ours(verdict?.(value) ?? '')}</p>
      <p class="hint"><code>${pane.host.typed(`=${prefix}${record.name}(${factors.map((values) => values.map(literal).join('*')).join(', ')})`)}</code></p>
      ${item ? toSurvey([[itemOf(item), value]], 'Put it into the survey', `: ${says} as ${itemOf(item).name}`) : nothing}
    </div>`;
  }

  /** What was typed in this block and is an item of the survey. */
  function typedItems(block: Block): readonly (readonly [BudgetItem, number])[] {
    return block.readings.map(readingOf).flatMap((reading) => {
      const { value } = valueRead(reading);
      return reading.item && typed.has(reading.id) && value !== undefined ? [[itemOf(reading.item), value] as const] : [];
    });
  }

  function blockOf(block: Block, k: number): TemplateResult {
    const items = typedItems(block);
    const names = items.map(([{ name }]) => name).join(', ');
    return html`<details ?open=${k === 0}>
      <summary>${block.title}</summary>
      ${block.readings.map((id) => readingField(block, id))}
      <div aria-live="polite">${block.findings.map(finding)}</div>
      ${items.length > 0 ? toSurvey(items, 'Put these readings into the survey', `: ${names}`) : nothing}
    </details>`;
  }

  const view = (): TemplateResult => html`
    <p class="lead">Read the settings and gauges of a press and dryer that are running: here is what they mean. Figures that the survey holds are filled in.</p>
    ${blocks.map(blockOf)}`;

  return { title: 'Readings', view, refresh };
}
