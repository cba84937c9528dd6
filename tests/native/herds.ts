import fc from 'fast-check';
import { type BudgetItem, budgetItems } from '../../src/budget/items.ts';
import { demoHerd } from '../../src/workbook/demo-herd.ts';
import { type Inputs, inputs, nothingMade, pressAlone, tooLittle } from '../functions/worked-herd.ts';

const spelled = (value: number): number => Number(value.toPrecision(3));

/** About what the worked and the invented herd have, now and then anything that the item takes, and rarely what it refuses. */
function givenFor({ name, parameter }: BudgetItem): fc.Arbitrary<unknown> {
  const { choices, range = [0, 1], bounds } = parameter;
  if (choices) return fc.constantFrom(...choices);
  const held = [inputs[name], demoHerd[name]].filter((value) => typeof value === 'number');
  const [lowest, highest] = range as [number, number];
  const inRange = (value: number): number => {
    const kept = Math.min(highest, Math.max(lowest, spelled(value)));
    return bounds?.whole ? Math.round(kept) : kept;
  };
  const near = fc
    .tuple(
      fc.constantFrom(...(held.length > 0 ? held : [lowest + (highest - lowest) / 10])),
      fc.double({ min: 0.5, max: 1.6, noNaN: true }),
    )
    .map(([value, times]) => inRange(value * times));
  const anywhere = fc
    .double({ min: 0, max: 1, noNaN: true })
    .map((share) => inRange(lowest + (Math.min(highest, 1e5) - lowest) * share ** 3));
  return fc.oneof(
    { arbitrary: near, weight: 60 },
    { arbitrary: anywhere, weight: 4 },
    { arbitrary: fc.constantFrom(highest * 2 + 1, 'ten'), weight: 1 },
  );
}

/** Items that are needed are mostly there; the others as often as not. */
const herds = fc
  .tuple(
    ...budgetItems.map((item) =>
      fc.tuple(fc.integer({ min: 0, max: 99 }), givenFor(item)).map(([chance, value]) => {
        const given = chance < (item.needed || item.name in inputs ? 98 : 40);
        return given ? ([[item.name, value]] as const) : [];
      }),
    ),
  )
  .map((pairs) => Object.fromEntries(pairs.flat()) as Inputs);

/** The same every time. */
export const randomHerds = (count: number): readonly Inputs[] => fc.sample(herds, { numRuns: count, seed: 20_260_304 });

export const heldHerds: Readonly<Record<string, Inputs>> = {
  'the invented herd': demoHerd as Inputs,
  'the worked herd': inputs,
  'press alone': pressAlone,
  'no dryer, its items left standing': { ...inputs, Dryer: 'no' },
  'no dryer, said first of all': { Dryer: 'no' },
  'a dryer to the pressed dry matter': { ...pressAlone, Dryer: 'yes' },
  'neither a dryer nor none': { ...inputs, Dryer: 'perhaps' },
  'too little slurry': tooLittle,
  'air that carries nothing off': nothingMade,
  frost: { ...inputs, 'Outdoor temperature': 2, 'Coldest month temperature': -9, 'Coldest month humidity': 0.95 },
  'heat alone': {
    ...Object.fromEntries(Object.entries(inputs).filter(([name]) => name !== 'Hot water litres per hour')),
    'Heat available kW': 55,
  },
  'with a loan’s relief and straight allowances': {
    ...inputs,
    'Bought price per t': 400,
    'Bought t last year': 190,
    'Bought bill last year': 41_000,
    'Interest relief': 'yes',
    'Allowance method': 'straight',
    'Rest allowed in the last year': 'yes',
    'Tax rate': 0.25,
    'Yearly allowance': 0.14,
  },
  'something missing': Object.fromEntries(Object.entries(inputs).filter(([name]) => name !== 'Air m3 per hour')),
  'something refused': { ...inputs, 'Slurry dry matter': 7 },
  'almost nothing given': { Bed: 'deep' },
};
