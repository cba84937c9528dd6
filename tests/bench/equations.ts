import { IRR as formulajsRate } from '@formulajs/formulajs';
import { irr as financialRate } from 'financial';
import psychrolib from 'psychrolib';
import { evaporation } from '../../src/domain/drying.ts';
import { internalRateOfFlows } from '../../src/domain/internal-rate.ts';
import { netPresentValue } from '../../src/domain/investment.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';
import { built } from './built.ts';
import { compare, type Row } from './measure.ts';

const EXHAUST_RH = 0.75;
const HEAT_LOSS = 0.1;

/** The same balance by bisection to the same nanokelvin on the reference library: what anyone would write first. */
function byBisection(air_m3_h: number, ambient_c: number, ambient_rh: number, supply_c: number): number {
  const pressure_pa = psychrolib.GetStandardAtmPressure(0);
  const w = psychrolib.GetHumRatioFromRelHum(ambient_c, ambient_rh, pressure_pa);
  const warm_c = supply_c - HEAT_LOSS * (supply_c - ambient_c);
  const liquid_j_kg = 4186 * Math.max(ambient_c, 0);
  const held = psychrolib.GetMoistAirEnthalpy(warm_c, w) - w * liquid_j_kg;
  const wAt = (t_c: number) => psychrolib.GetHumRatioFromRelHum(t_c, EXHAUST_RH, pressure_pa);
  let [low, high] = [-40, warm_c];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    const exhaust_w = wAt(middle);
    if (psychrolib.GetMoistAirEnthalpy(middle, exhaust_w) - exhaust_w * liquid_j_kg > held) high = middle;
    else low = middle;
  }
  const air_kg_h = air_m3_h / psychrolib.GetMoistAirVolume(supply_c, w, pressure_pa);
  return air_kg_h * (wAt((low + high) / 2) - w);
}

const bySolver = (air_m3_h: number, ambient_c: number, ambient_rh: number, supply_c: number) =>
  evaporation(air_m3_h, ambient_c, ambient_rh, supply_c, 0, 'supply', EXHAUST_RH, HEAT_LOSS, undefined).evaporation_kg_h;

function sumOf(one: typeof bySolver): number {
  let sum = 0;
  for (let k = 0; k < 2000; k++) sum += one(3200, k / 50, 0.8, 50 + k / 50);
  return sum;
}

/** Both must say the same, or their times mean nothing. */
export function exhaustBalance(): Row {
  psychrolib.SetUnitSystem(psychrolib.SI);
  const apart = Math.abs(sumOf(bySolver) / sumOf(byBisection) - 1);
  if (!(apart < 1e-8)) throw new Error(`exhaust balance: the two differ by ${apart}`);
  const [ours = 0, theirs = 0] = compare([() => sumOf(bySolver), () => sumOf(byBisection)]);
  const note = 'evaporation() with dew point and volume / bisection on psychrolib to 1e-9 K; answers agree to 1e-8';
  return { name: 'Exhaust balance, 2,000 states', ours, theirs, unit: 'ms', target: 5, faster: true, note };
}

interface Plan {
  readonly says: string;
  readonly flows: readonly number[];
  /** How many rates there are; only where it is one is there an answer to give. */
  readonly answers: 0 | 1 | 3;
}

function level(capital: number, saving: number, life: number, residual = 0): Plan {
  const flows = [-capital, ...Array<number>(life).fill(saving)];
  flows[life] = saving + residual;
  const says = `${capital} laid out, ${saving} a year for ${life} years, ${residual} at the end`;
  return { says, flows, answers: saving > 0 || saving + residual > 0 ? 1 : 0 };
}

/** Kits that pay well, just, hardly and not at all: a farm that asks whether it pays meets every one of them. */
const plans: readonly Plan[] = [
  level(100_000, 25_000, 10),
  level(100_000, 12_000, 10),
  level(120_000, 30_000, 15, 20_000),
  level(100_000, 60_000, 20),
  level(100_000, 200_000, 10),
  level(100_000, 9000, 10),
  level(100_000, 3000, 10),
  level(100_000, 500, 10),
  level(100_000, 1000, 40),
  level(100_000, -500, 5, 90_000),
  level(100_000, -500, 5, 20_000),
  level(1_000_000, -500, 3, 1000),
  level(1_000_000, 100, 1),
  level(1000, 1_000_000, 2, 20_000),
  level(1000, 1_000_000, 30),
  level(100_000, 0, 10),
  { says: '−5, 10.5, 1, −8, 1: three rates', flows: [-5, 10.5, 1, -8, 1], answers: 3 },
];

const rates: Readonly<Record<string, (flows: number[]) => unknown>> = {
  ours: internalRateOfFlows,
  financial: financialRate,
  formulajs: formulajsRate,
};

function tried(rate: (flows: number[]) => unknown, flows: number[]): unknown {
  try {
    return rate(flows);
  } catch (thrown) {
    return thrown instanceof NoAnswer ? thrown.message : `throws ${String(thrown)}`;
  }
}

/** A rate is right where the net present value at it is nothing beside the money that moves; where there is none, or more than one, it must say so. */
function isRight({ flows, answers }: Plan, found: unknown): boolean {
  if (answers !== 1) return typeof found !== 'number' || Number.isNaN(found);
  if (typeof found !== 'number' || !(found > -1)) return false;
  const today = flows.map((flow, year) => flow / (1 + found) ** year);
  const moved = today.reduce((sum, flow) => sum + Math.abs(flow), 0);
  return Math.abs(today.reduce((sum, flow) => sum + flow, 0)) <= 1e-6 * moved;
}

/** Times on the plans that all three get right, and what each says of those that one gets wrong. */
export function internalRates(): { rows: Row[]; wrong: string[] } {
  const wrong: string[] = [];
  const shared: (readonly number[])[] = [];
  for (const plan of plans) {
    const said = Object.entries(rates).map(([by, rate]) => ({ by, found: tried(rate, [...plan.flows]) }));
    if (said.every(({ found }) => isRight(plan, found))) {
      if (plan.answers === 1) shared.push(plan.flows);
      continue;
    }
    const each = said.map(({ by, found }) => `${by} ${isRight(plan, found) ? 'right' : 'WRONG'} (${found})`);
    wrong.push(`${plan.says}: ${each.join('; ')}`);
  }
  const all = (rate: (flows: number[]) => unknown) => () => {
    for (let k = 0; k < 500; k++) for (const flows of shared) rate(flows as number[]);
  };
  const [ours = 0, ...theirs] = compare(Object.values(rates).map(all));
  const note = `the ${shared.length} plans that all get right, NPV at the rate being 0 to a millionth`;
  const rows = theirs.map((time, k): Row => {
    const name = `Internal rate, against ${Object.keys(rates)[k + 1]}`;
    return { name, ours, theirs: time, unit: 'ms', target: 5, faster: true, note };
  });
  return { rows, wrong };
}

const DRAWS = 10_000;

/** INVEST.PROBABILITY against the net present values alone, from numbers already drawn. */
export function probability(): Row {
  const drivers = [
    ['kit cost', 80_000, 100_000, 140_000],
    ['bought price per t', 90, 120, 170],
    ['bought t per year', 250, 300, 330],
    ['running cost per year', 10_000, 14_000, 20_000],
    ['discount rate', 0.08, 0.08, 0.08],
  ];
  const drawn = Array.from({ length: DRAWS }, (_, k) => [80_000 + 6 * k, 90 + k / 125, 250 + k / 125, 10_000 + k] as const);
  const bare = () => drawn.map(([kit, price, t, running]) => netPresentValue(kit, price * t - running, 10, 0.08, 0, 0).npv);
  const [ours = 0, theirs = 0] = compare([() => built('INVEST.PROBABILITY')(drivers, 10, 0, DRAWS), bare], 50);
  return {
    name: 'INVEST.PROBABILITY, 10,000 draws',
    ours,
    theirs,
    unit: 'ms',
    target: 1.5,
    note: 'drawing, shuffling and ranking included / NPVs alone',
  };
}
