import { type DefaultName, defaultOf, type SourceId, type Status } from '../../../core/bibliography.ts';
import { type Argument, call } from '../../../core/call.ts';
import type { FunctionRecord } from '../../../core/define.ts';
import findings from '../../../data/welfare-findings.json';
import { registry } from '../../../functions/index.ts';
import { typed } from '../example.ts';
import { familyOf } from '../families.ts';
import { type Html, html, joined } from '../html.ts';
import { cited, equation, leftOut, pageOf, shown, stepAnchor, unitWord } from '../words.ts';

/** A paragraph that can be objected to by its number: its text, then any table that belongs to it. */
export type Paragraph = Html | readonly [text: Html, ...tables: readonly Html[]];

export interface Section {
  readonly id: string;
  readonly title: string;
  readonly paragraphs: readonly Paragraph[];
}

export function recordNamed(name: string): FunctionRecord {
  const record = registry.find((record) => record.name === name);
  if (!record) throw new Error(`the method note speaks of ${name}, which is no function`);
  return record;
}

/** A default as the functions take it: the figure, its trust and its source, so that the note cannot drift from them. */
export const taken = (name: DefaultName): Html => html`${leftOut(defaultOf(name))}`;

/** Steps' equations as a function works them out, with a link to it. */
export function step(name: string, ...keys: readonly string[]): Html {
  const { working } = recordNamed(name);
  const lines = keys.map((key) => {
    const line = working[key];
    if (!line) throw new Error(`the method note speaks of ${key} in ${name}, which has no such step`);
    return equation(key, line);
  });
  return html`${joined(lines, '; ')} (<a href="${pageOf(familyOf(name))}#${stepAnchor(name, keys[0] as string)}">${name}</a>)`;
}

/** What may be entered for an argument. */
export function accepts(name: string, argument: string): string {
  const parameter = recordNamed(name).parameters.find((parameter) => parameter.name === argument);
  if (!parameter) throw new Error(`the method note speaks of ${argument} of ${name}, which has no such argument`);
  return `${parameter.accepts}${parameter.unit ? ` ${unitWord(parameter.unit)}` : ''}`;
}

export const answerOf = (name: string, args: readonly Argument[]): number => Number(call(recordNamed(name), args)[0]?.[0]);

/** A formula as it is typed, with what it gives when the note is made. */
export function worked(name: string, args: readonly Argument[]): Html {
  const record = recordNamed(name);
  const [[found] = []] = call(record, args);
  return html`<code>${typed(record, args).formula}</code> gives <b>${shown(typeof found === 'number' ? Number(found.toPrecision(5)) : found)}</b> ${unitWord(record.working[record.result]?.unit ?? '')}`;
}

/** A published finding on lying, hocks or stocking. */
export function finding(name: string): Html {
  const held = findings.find((row) => row.finding === name);
  if (!held) throw new Error(`the method note speaks of the finding "${name}", which is not held`);
  return html`${shown(held.figure)}${typeof held.figure === 'number' ? ` ${held.unit}` : ''} (${cited(held.source as SourceId, held.status as Status)})`;
}
