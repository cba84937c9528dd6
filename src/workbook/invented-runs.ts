/** Three invented runs: hours, kg and dry matter wet and dried, air, outdoor air, supply, exhaust, water in, litres of it an hour. */
export const inventedRuns: readonly (readonly number[])[] = [
  [6, 540, 0.345, 333, 0.56, 2880, 10.2, 0.8, 63.5, 28.9, 78.5, 2600],
  [6, 548, 0.34, 336, 0.555, 2910, 9.1, 0.84, 63, 28.1, 78, 2600],
  [6, 531, 0.342, 322, 0.564, 2895, 11, 0.76, 64.2, 29.3, 78.5, 2600],
];
