import { herdDemand } from '../../src/domain/demand.ts';
import { evaporation } from '../../src/domain/drying.ts';
import { hygieneScore } from '../../src/domain/hygiene.ts';
import { internalRate } from '../../src/domain/investment.ts';
import type { Material } from '../../src/domain/materials.ts';
import { built } from './built.ts';
import { compare, type Row } from './measure.ts';

type Range = unknown[][];

const ROWS = 100_000;

const column = <T>(rows: number, cell: (share: number) => T): T[][] => Array.from({ length: rows }, (_, k) => [cell(k / rows)]);
const between = (low: number, high: number, turns: number) => (share: number) => low + (high - low) * ((share * turns) % 1);

interface Case {
  readonly name: string;
  readonly ranges: (rows: number) => Range[];
  /** What is compared, and why a target is missed. */
  readonly note?: string;
  /** One answer by the domain function, defaults and all, as anyone would write it into a loop. */
  readonly bare: (a: never, b: never, c: never, d: never) => number;
}

const materials: readonly Material[] = ['sawdust', 'sand', 'dried fibre', 'chopped straw'];

const cases: readonly Case[] = [
  {
    name: 'DRYING.EVAPORATION',
    ranges: (rows) =>
      [between(1000, 5000, 7), between(-10, 25, 11), between(0.5, 0.95, 13), between(50, 90, 17)].map((f) => column(rows, f)),
    bare: (air: number, ambient: number, rh: number, supply: number) =>
      evaporation(air, ambient, rh, supply, 0, 'supply', 0.75, 0.1, undefined).evaporation_kg_h,
  },
  {
    name: 'DEMAND.HERD',
    note: 'built file / bare loop, which the engine reduces to two products; ours looks at every cell and keeps the steps',
    ranges: (rows) => [between(100, 900, 7), between(0.5, 9, 11)].map((f) => column(rows, f)),
    bare: (cubicles: number, kg: number) => herdDemand(cubicles, kg, 365, 0).t_year,
  },
  {
    name: 'INVEST.IRR',
    ranges: (rows) => [
      column(rows, between(50_000, 200_000, 7)),
      column(rows, between(10_000, 40_000, 11)),
      column(rows, (share) => 5 + (Math.floor(share * 1500) % 15)),
    ],
    bare: (capital: number, saving: number, life: number) => internalRate(capital, saving, life, 0, 0).irr,
  },
  {
    name: 'HYGIENE.RISK',
    ranges: (rows) => [
      column(rows, between(0.3, 0.9, 7)),
      column(rows, between(0.5, 5, 11)),
      column(rows, (share) => materials[Math.floor(share * 1000) % 4]),
      column(rows, between(0, 30, 13)),
    ],
    bare: (dm: number, days: number, material: Material, shed: number) => hygieneScore(dm, days, material, shed).score,
  },
];

/** A bare loop that reads the same ranges and builds the same kind of answer. */
function bareLoop({ bare }: Case, [a, b, c, d]: readonly Range[]): number[][] {
  const run = bare as (...given: unknown[]) => number;
  const rows = (a as Range).length;
  const answer = new Array<number[]>(rows);
  for (let k = 0; k < rows; k++) answer[k] = [run(a?.[k]?.[0], b?.[k]?.[0], c?.[k]?.[0], d?.[k]?.[0])];
  return answer;
}

export const ranges = (): Row[] =>
  cases.map((one) => {
    const given = one.ranges(ROWS);
    const ours = built(one.name);
    const [function_ms = 0, bare_ms = 0] = compare([() => ours(...given), () => bareLoop(one, given)]);
    return {
      name: `${one.name}, 100,000 rows`,
      ours: function_ms,
      theirs: bare_ms,
      unit: 'ms',
      target: 1.5,
      note: one.note ?? 'built file / bare loop',
    };
  });

/** One call of the first case, and the most memory, kB, that the process has held by then. */
export function callOnce(ours: boolean): number {
  const [one] = cases as [Case];
  const given = one.ranges(ROWS);
  if (ours) built(one.name)(...given);
  else bareLoop(one, given);
  return process.resourceUsage().maxRSS;
}
