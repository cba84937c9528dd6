/**
 * Where a continuous function crosses zero between `low` and `high`, to the last bit that a number holds,
 * or undefined where both ends lie on the same side of zero.
 */
export function crossing(residual: (x: number) => number, low: number, high: number): number | undefined {
  const atLow = residual(low);
  if (atLow === 0) return low;
  const rises = atLow < 0;
  if (!(rises ? residual(high) >= 0 : residual(high) <= 0)) return undefined;
  let [below, above] = [low, high];
  for (;;) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) return above;
    if (residual(middle) < 0 === rises) below = middle;
    else above = middle;
  }
}
