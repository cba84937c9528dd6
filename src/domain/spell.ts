/** A number as our sentences write it: thousands with commas, no trailing digits of binary noise. */
export function spell(value: number): string {
  if (!Number.isFinite(value)) return 'not a number';
  const size = Math.abs(value);
  if (size > 1e12 || size < 1e-4) return value.toPrecision(4).replace(/\.?0+(e|$)/, '$1');
  const [whole, ...decimals] = String(Number(value.toPrecision(6))).split('.') as [string, ...string[]];
  return [whole.replace(/\B(?=(\d{3})+$)/g, ','), ...decimals].join('.');
}

/** A sentence with its numbers spelled: said`${0.1 + 0.2} is above 0.25` holds 0.3, not its seventeen digits. */
export const said = (words: TemplateStringsArray, ...values: readonly (number | string)[]): string =>
  String.raw({ raw: words }, ...values.map((value) => (typeof value === 'number' ? spell(value) : value)));
