import { figures } from '../../src/budget/figures.ts';
import { CellError } from '../../src/core/result.ts';
import { herd, type Inputs } from '../functions/worked-herd.ts';

/** What a spreadsheet program shows in the cell of a figure: an error by its code, `#N/A`. */
export type Shown = (key: string) => unknown;

const isError = (shown: unknown): boolean => typeof shown === 'string' && shown.startsWith('#');

function agrees(ours: unknown, shown: unknown): boolean {
  if (ours instanceof CellError) return isError(shown);
  if (typeof ours === 'number') return typeof shown === 'number' && Math.abs(shown - ours) <= 1e-6 * Math.max(1, Math.abs(ours));
  return shown === ours;
}

/** Where a recalculated copy of a plan does not say what our functions say: each figure with both. */
export function differences(given: Inputs, shown: Shown): readonly string[] {
  const answers = new Map(herd(given).map(([key, value]) => [key, value]));
  return figures.flatMap(({ key }) => {
    const [ours, theirs] = [answers.get(key), shown(key)];
    const said = ours instanceof CellError ? `${ours.code} ${ours.message}` : String(ours);
    return agrees(ours, theirs) ? [] : [`${key}: ${said} against ${String(theirs)}`];
  });
}
