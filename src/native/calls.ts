import { equationOf, type FunctionRecord, type Line } from '../core/define.ts';
import type { Parameter } from '../core/parameters.ts';
import { cite, citeDefault } from '../core/working.ts';
import { equations } from '../functions/equations.ts';
import { registry } from '../functions/index.ts';
import { type Asked, namesIn, nativeFormula, quotedText, type Scope } from './expression.ts';
import { Solving } from './solving.ts';
import { type Step, Steps } from './steps.ts';
import { Years, yearBefore } from './years.ts';

const isCell = (text: string): boolean => /^(?:\w+!)?\$?[A-Z]+\$?\d+$/.test(text);
const unquoted = (text: string): string => text.replace(/^"|"$/g, '');
const isConstant = (text: string): boolean => /^-?[\d.E-]+$/.test(text) || /^"[^"]*"$/.test(text);

/** Where a step is written: among the lines of the working, or into the row of a guess. */
type Write = (step: Step) => string;

interface Solve extends Omit<Step, 'formula'> {
  readonly heading: string;
  /** Sees to it that there is an answer only where the function has one. */
  readonly answered: (formula: string) => string;
}

/** What says no more than its label. */
const untold = { unit: '', says: '', equation: '', source: '' } as const;

const nativeHow = (line: Line): string | undefined => line.closed ?? ('how' in line ? line.how : undefined);

/** The arguments of a call, by name: texts that may stand in a formula. */
type GivenTo = ReadonlyMap<string, string>;

const recordCalled = (name: string): FunctionRecord => {
  const record = registry.find((one) => one.name === name);
  if (!record) throw new Error(`no function of ours is called ${name}`);
  return record;
};

const least = (cells: readonly string[]): string => `MIN(${cells.map((cell) => `IF(ISNUMBER(${cell}),${cell},1E+99)`).join(',')})`;
const most = (cells: readonly string[]): string => `MAX(${cells.map((cell) => `IF(ISNUMBER(${cell}),${cell},-1E+99)`).join(',')})`;

/** Numbers in words as our tables write them, whatever the locale: TEXT would read its pattern by the locale's marks. */
const inWhole = (cell: string): string => `ROUND(${cell},0)`;
const inTenths = (cell: string): string => `INT(ROUND(${cell}*10,0)/10)&"."&MOD(ROUND(${cell}*10,0),10)`;

/** Writes calls of our functions out as native formulas, step by step. */
export class Calls {
  readonly steps = new Steps();
  readonly solving = new Solving((label, formula) => this.steps.cell({ ...untold, label, formula }));
  readonly years = new Years();
  readonly #write: Write = (step) => this.steps.cell(step);
  readonly #emptyAllowed: (given: string) => string;

  /** @param emptyAllowed an argument that its function can do without, as it may be handed over empty */
  constructor(emptyAllowed = (given: string): string => given) {
    this.#emptyAllowed = emptyAllowed;
  }

  /** A call with its arguments as texts of formulas; undefined where one is left out. The cell of its answer, or what is asked of its table. */
  call(name: string, args: readonly (string | undefined)[], asked?: Asked): string {
    const record = recordCalled(name);
    const outer = this.steps.heading(`${name}: ${record.summary}`);
    const given = new Map(record.parameters.map((parameter, k) => [parameter.name, this.#argument(parameter, args[k])]));
    const answer = asked ? this.#asked(record, given, asked) : this.#step(record, given, record.result, this.#write);
    this.steps.heading(outer);
    return answer;
  }

  /** What a word of our equations picks from the table of a function. */
  #asked(record: FunctionRecord, given: GivenTo, { word, args }: Asked): string {
    const step = (name: string): string => this.#step(record, given, name, this.#write);
    const [first = '', second = ''] = args;
    switch (word) {
      case 'step':
      case 'row':
        return step(unquoted(first));
      case 'span':
        return [step('lowest'), step('highest')].map(inWhole).join('&"–"&');
      case 'trials': {
        const cells = Object.keys(record.inRows ?? {}).map(step);
        const end = (label: string, formula: string): string =>
          this.#write({ ...untold, label, formula: `IF(COUNT(${cells.join(',')})=0,NA(),${formula})` });
        return [end('lowest of the trials', least(cells)), end('highest of the trials', most(cells))].map(inTenths).join('&"–"&');
      }
      case 'last':
        return this.#yearsOf(record, given).last(unquoted(first));
      case 'worth': {
        const table = this.#yearsOf(record, given);
        return `SUMPRODUCT(${table.column(unquoted(first))}/(1+${second})^${table.column('year')})`;
      }
      default:
        throw new Error(`an equation of ours asks ${word} of ${record.name}`);
    }
  }

  /** The table that a function gives year by year. */
  #yearsOf(record: FunctionRecord, given: GivenTo) {
    const { byYear } = record;
    if (!byYear) throw new Error(`${record.name} tells no year by arithmetic`);
    return this.years.table(`${record.name}: ${record.summary}`, byYear, given, (how, inYear, aside) => {
      const write: Write = ({ label, formula }) => aside(label, formula);
      return nativeFormula(how, {
        name: (name) => inYear(name) ?? this.#step(record, given, name, this.#write),
        call: (name, args) => (name === 'before' ? yearBefore(args[0] as string) : this.#equation(name, args, write)),
      });
    });
  }

  #argument(parameter: Parameter, handed: string | undefined): string {
    const { name, says, unit, fallback } = parameter;
    const given = handed !== undefined && fallback ? this.#emptyAllowed(handed) : handed;
    const common = { label: name, unit, says };
    if (given === undefined || given === '""') {
      const value = fallback?.value;
      if (value === undefined) return '""';
      const formula = typeof value === 'number' ? String(value) : quotedText(String(value));
      return this.steps.cell({ ...common, formula, equation: 'default', source: citeDefault(fallback as never) });
    }
    return isCell(given) || isConstant(given) ? given : this.steps.cell({ ...common, formula: given, equation: 'given', source: '' });
  }

  /** One step of a function, with all that it rests on before it. */
  #step(record: FunctionRecord, given: GivenTo, step: string, write: Write, known = new Map<string, string>()): string {
    const argument = given.get(step) ?? known.get(step);
    if (argument !== undefined) return argument;
    const line = record.inRows?.[step] ?? record.working[step];
    if (!line) throw new Error(`${record.name} has no step ${step}`);
    const about = {
      label: step,
      unit: line.unit,
      says: line.says,
      equation: equationOf(line),
      source: line.source ? cite(line.source) : '',
    };
    const scope = this.#scope((name) => this.#step(record, given, name, write, known), write);
    const how = nativeHow(line);
    const answered = (formula: string): string => (line.only ? `IF(${nativeFormula(line.only, scope)},${formula},NA())` : formula);
    if (how !== undefined) return write({ ...about, formula: answered(nativeFormula(how, scope)) });
    if (!('solves' in line)) throw new Error(`${record.name} tells ${step} in words, which no formula can`);
    const rests = (name: string): boolean => name === step || this.#restsOn(record, name, step);
    const ends = line.between.map((end) => nativeFormula(end, scope)) as [string, string];
    return this.#solve(
      { ...about, heading: `${record.name}: ${step}`, answered },
      step,
      ends,
      line.solves.split('=='),
      write,
      (guess, aside) => {
        const own = new Map([...known, [step, guess]]);
        return this.#scope(
          (one) => (rests(one) ? this.#step(record, given, one, aside, own) : this.#step(record, given, one, write, known)),
          aside,
        );
      },
    );
  }

  /** A figure on both sides of its equation: its table of halvings, its cell, and beside it how far the sides are apart. */
  #solve(
    { heading, answered, ...about }: Solve,
    step: string,
    between: readonly [string, string],
    sides: readonly string[],
    write: Write,
    scopeAt: (guess: string, aside: Write) => Scope,
  ): string {
    const { answer, residual, meets } = this.solving.find(heading, about.equation, between, (guess, writeAside) => {
      const scope = scopeAt(guess, ({ label, formula }) => writeAside(label, formula));
      return sides.map((side) => nativeFormula(side, scope)) as [string, string];
    });
    const found = write({ ...about, formula: answered(`IF(${meets},${answer},NA())`) });
    write({ ...about, label: `${step}: left less right`, says: 'How far the two sides are still apart', formula: residual });
    return found;
  }

  /** Whether a step of a function rests on another, however far down. */
  #restsOn(record: FunctionRecord, step: string, on: string): boolean {
    const line = record.working[step];
    if (!line) return false;
    const how = nativeHow(line);
    return how !== undefined && namesIn(how).some((name) => name === on || this.#restsOn(record, name, on));
  }

  #scope(name: Scope['name'], write: Write): Scope {
    const call: Scope['call'] = (called, args, asked) => {
      const ours = equations[called]?.as ?? (called.includes('.') ? called : undefined);
      if (ours === undefined) return this.#equation(called, args, write);
      if (write !== this.#write) throw new Error(`${ours} is looked for by guesses, which stand in rows and not in steps`);
      return this.call(ours, args, asked);
    };
    return { name, call };
  }

  /** One of the equations that the working of our functions calls by name. */
  #equation(name: string, args: readonly string[], write: Write): string {
    const equation = equations[name];
    if (!equation) throw new Error(`the equation ${name} is held nowhere`);
    const { of, says, unit, source } = equation;
    const about = { label: name, unit, says, equation: equationOf(equation), source: source ? cite(source) : '' };
    const given = new Map(
      of.map((parameter, k) => {
        const argument = args[k] as string;
        if (isCell(argument) || isConstant(argument)) return [parameter, argument];
        const label = `${parameter} of ${name}`;
        return [parameter, write({ ...untold, label, formula: argument })];
      }),
    );
    const inner = this.#scope((one) => given.get(one) as string, write);
    const how = nativeHow(equation);
    if (how !== undefined) return write({ ...about, formula: nativeFormula(how, inner) });
    if (!('solves' in equation)) throw new Error(`the equation ${name} is told in words, which no formula can`);
    const ends = equation.between.map((end) => nativeFormula(end, inner)) as [string, string];
    return this.#solve(
      { ...about, heading: name, answered: (formula) => formula },
      name,
      ends,
      equation.solves.split('=='),
      write,
      (guess, aside) => this.#scope((one) => (one === name ? guess : (given.get(one) as string)), aside),
    );
  }
}
