import { type Arg, registries } from '@odoo/o-spreadsheet';

/** Where these functions of the grid take their criteria: one place, or every second from it on. */
const criteria: Readonly<Record<string, readonly [first: number, others: boolean]>> = {
  COUNTIF: [1, false],
  SUMIF: [1, false],
  AVERAGEIF: [1, false],
  COUNTIFS: [1, true],
  SUMIFS: [2, true],
  AVERAGEIFS: [2, true],
  MAXIFS: [2, true],
  MINIFS: [2, true],
};

const isBlank = (arg: Arg): boolean => !!arg && !Array.isArray(arg) && arg.value === null;

/** A blank cell as criterion is 0, as Microsoft's page on COUNTIF has it (from memory) and LibreOffice works it out; to the grid it matched every blank. */
export function mendCriteria(): void {
  const { functionRegistry } = registries;
  for (const [name, [first, others]] of Object.entries(criteria)) {
    const given = functionRegistry.get(name);
    const isCriterion = (k: number): boolean => k === first || (others && k > first && (k - first) % 2 === 0);
    functionRegistry.replace(name, {
      ...given,
      compute(...args) {
        return given.compute.apply(
          this,
          args.map((arg, k) => (isCriterion(k) && isBlank(arg) ? { value: 0 } : arg)),
        );
      },
    });
  }
}
