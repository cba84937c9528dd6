import { type Arg, registries } from '@odoo/o-spreadsheet';
import { most } from './workbook-shape.ts';

/**
 * Functions of the grid that make as many cells, or go through as many days or periods, as they are told, and the arguments
 * whose product that is. It works them out in one go: with a large enough number the page would hang each time it is opened.
 */
const counted: Readonly<Record<string, readonly number[]>> = {
  SEQUENCE: [0, 1],
  RANDARRAY: [0, 1],
  MUNIT: [0, 0],
  EXPAND: [1, 2],
  CUMIPMT: [4],
  CUMPRINC: [4],
  DB: [3],
  VDB: [4],
  WORKDAY: [1],
  'WORKDAY.INTL': [1],
};

const numberOf = (arg: Arg): number => Number(Array.isArray(arg) ? arg[0]?.[0]?.value : (arg?.value ?? 1));

/** Answers with an error in the cell where one of these functions is told to do more than a sheet may hold. */
export function limitFunctions(): void {
  const { functionRegistry } = registries;
  for (const [name, places] of Object.entries(counted)) {
    const given = functionRegistry.get(name);
    functionRegistry.replace(name, {
      ...given,
      compute(...args) {
        const count = places.reduce((product, place) => product * Math.abs(numberOf(args[place])), 1);
        if (count <= most.cells || Number.isNaN(count)) return given.compute.apply(this, args);
        const message = `${name}: ${count.toLocaleString('en-GB')} cells, days or periods are too many; at most ${most.cells.toLocaleString('en-GB')}`;
        return { value: '#ERROR', message };
      },
    });
  }
}
