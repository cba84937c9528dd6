import exampleHerd from '../../src/data/example-herd.json';
import { registry } from '../../src/functions/index.ts';
import { built } from './built.ts';
import { compare, median, type Row } from './measure.ts';

/** Time for one row in a call of many against that in a call of fewer; flat where nothing is done again for every row. */
function perRow(works: readonly (() => unknown)[], sizes: readonly number[], rounds: number): readonly number[] {
  const times = compare(works, rounds);
  return sizes.map((size, k) => (1000 * (times[k] as number)) / size);
}

function herdsRow(): Row {
  const sizes = [10_000, 100];
  const headings = [Object.keys(exampleHerd)];
  const herds = (size: number) => Array.from({ length: size }, (_, k) => Object.values({ ...exampleHerd, Cows: 100 + (k % 400) }));
  const works = sizes.map((size) => {
    const given = herds(size);
    return () => built('BUDGET.HERDS')(headings, given);
  });
  const [ours = 0, theirs = 0] = perRow(works, sizes, 5);
  return { name: 'BUDGET.HERDS, per herd', ours, theirs, unit: 'µs', target: 1.3, note: '10,000 herds / 100 herds' };
}

/** Every function that takes ranges, called with its own example down a column. */
function rangesRow(): Row {
  const sizes = [100_000, 1000];
  const broadcasting = registry.filter(({ columns, parameters }) => !columns && parameters.length > 0);
  const measured = broadcasting.map(({ name, examples }) => {
    const [first, ...rest] = examples[0]?.call ?? [];
    const works = sizes.map((size) => {
      const column = Array.from({ length: size }, () => [first]);
      return () => built(name)(column, ...rest);
    });
    const [many = 0, few = 0] = perRow(works, sizes, 5);
    return { name, many, few };
  });
  const byRatio = measured.toSorted((one, other) => one.many / one.few - other.many / other.few);
  const worst = byRatio.slice(-3).reverse();
  const named = worst.map(({ name, many, few }) => `${name} ${(many / few).toFixed(2)}`).join(', ');
  const ours = median(measured.map(({ many }) => many));
  const theirs = median(measured.map(({ few }) => few));
  const note = `100,000 rows / 1,000, median of all ${measured.length}; steepest ${named}`;
  return { name: 'Ranges, per row', ours, theirs, unit: 'µs', target: 1.3, note };
}

export const growth = (): Row[] => [herdsRow(), rangesRow()];
