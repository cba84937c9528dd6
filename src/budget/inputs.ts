import { cite } from '../core/working.ts';
import { budgetItems, whenNeeded } from './items.ts';

/** Every item as BUDGET.INPUTS lists it. */
export function inputRows() {
  const rows = budgetItems.map((item) => {
    const { unit, fallback, range, choices } = item.parameter;
    const held = fallback?.value === undefined ? undefined : fallback;
    const standing = item.needed ? `required ${whenNeeded(item)}`.trim() : (fallback?.value ?? fallback?.shown ?? '–');
    const [lowest = '', highest = ''] = range ?? [];
    return [item.name, unit, standing, lowest, highest, choices?.join('; ') ?? '', held ? cite(held.source) : '', held?.status ?? ''];
  });
  return { rows };
}
