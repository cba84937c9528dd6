import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerOf } from '../../src/budget/given.ts';
import { pairUp } from '../../src/budget/herd.ts';
import { budgetItems, itemNamed } from '../../src/budget/items.ts';
import { levers } from '../../src/budget/levers.ts';
import { type Plan, planOf } from '../../src/budget/plan.ts';
import { demoHerd } from '../../src/workbook/demo-herd.ts';

/** Every value that a lever names is put back into the herd as a user would, and the whole range is walked where none is named. */

type Typed = Readonly<Record<string, string | number>>;
const names = budgetItems.map(({ name }) => name);
const planFrom = (typed: Typed): Plan => planOf(pairUp([names], [names.map((name) => typed[name] ?? '')]));

/** The invented herd with its figures at others; the bedding now left to follow the fibre's in some, water or heat left out. */
const herds = fc
  .record({
    factors: fc.array(fc.double({ min: 0.6, max: 1.6, noNaN: true }), { minLength: names.length, maxLength: names.length }),
    left: fc.constantFrom<readonly string[]>(
      [],
      ['Litres now'],
      ['Litres now', 'Days now'],
      ['Hot water litres per hour'],
      ['Heat available kW'],
      ['Grant', 'Borrowed'],
    ),
  })
  .map(({ factors, left }): Typed => {
    const typed: Record<string, string | number> = {};
    for (const [k, { name, parameter }] of budgetItems.entries()) {
      const value = demoHerd[name];
      if (value === undefined || left.includes(name)) continue;
      const [lowest, highest] = parameter.range ?? [];
      const other = typeof value === 'number' && parameter.unit !== 'date' ? value * (factors[k] as number) : value;
      const whole = typeof other === 'number' && parameter.bounds?.whole ? Math.round(other) : other;
      typed[name] = typeof whole === 'number' ? Math.min(highest as number, Math.max(lowest as number, whole)) : whole;
    }
    typed['Dried to dry matter'] = Math.max(Number(typed['Dried to dry matter']), Number(typed['Pressed dry matter']));
    return typed;
  });

const goals = [
  { name: 'cover 1', column: 3, gap: ({ kit }: Plan) => kit.limit.cover - 1 },
  { name: 'NPV 0', column: 4, gap: ({ money }: Plan) => money.npv },
] as const;
const WALK = 150;
const between = (from: number, to: number): readonly number[] =>
  Array.from({ length: WALK - 1 }, (_, k) => from + ((to - from) * (k + 1)) / WALK);

function holdLevers(typed: Typed): void {
  const base = planFrom(typed);
  // While a lever moves, the bedding now stays what it was taken to be.
  const held = { ...typed, 'Litres now': base.inputs.litres_now, 'Days now': base.inputs.interval_days_now };
  const { rows } = levers([names], [names.map((name) => typed[name] ?? '')]);
  for (const row of rows) {
    const [lever, , now] = row as [string, string, number];
    const { range } = itemNamed(lever)?.parameter ?? {};
    const [lowest, highest] = range as readonly [number, number];
    for (const { name, column, gap } of goals) {
      const isMet = (value: number): boolean => {
        const found = answerOf(() => gap(planFrom({ ...held, [lever]: value })));
        return typeof found === 'number' && found >= 0;
      };
      const value = row[column];
      const said = `${lever} from ${now} for ${name}: ${String(value)}`;
      const metNow = isMet(now);
      if (typeof value === 'number') {
        expect(isMet(value), said).toBe(true);
        for (const nearer of between(now, value)) expect(isMet(nearer), `${said}, yet ${nearer}`).toBe(metNow);
        const beyond = metNow ? value + (value - now) * 1e-6 : value - (value - now) * 1e-6;
        if (beyond !== value && beyond >= lowest && beyond <= highest) expect(isMet(beyond), `${said}, yet ${beyond}`).toBe(false);
      } else {
        for (const other of between(lowest, highest)) {
          // What another item rules out is no value of the lever: it is refused, and met by nothing.
          if (metNow && typeof answerOf(() => gap(planFrom({ ...held, [lever]: other }))) !== 'number') continue;
          expect(isMet(other), `${said}, yet ${other}`).toBe(metNow);
        }
      }
    }
  }
}

describe('the values that BUDGET.LEVERS names', () => {
  it('hold when they are put back, none nearer does, and where none is named the whole range has none', () => {
    for (const typed of fc.sample(herds, { numRuns: 24, seed: 14 })) holdLevers(typed);
  });
});
