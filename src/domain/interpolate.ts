/** A line through points in order of x, straight between them and flat outside. */
export function interpolate(points: readonly (readonly number[])[], x: number): number {
  let [x0, y0] = points[0] as [number, number];
  if (x <= x0) return y0;
  for (const [x1, y1] of points as readonly [number, number][]) {
    if (x <= x1) return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
    [x0, y0] = [x1, y1];
  }
  return y0;
}
