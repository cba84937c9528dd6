/** Two hundred invented herds: plain numbers made by a small seeded rule, so that they are the same every time. */

/** Park and Miller’s rule; each call gives the next number from 0 to 1. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

export const herdCount = 200;

export const herdHeadings = [
  'Herd',
  'Cows',
  'Cubicles',
  'Bedding litres per cubicle each time',
  'Days between beddings',
  'Bought price per t',
  'Labour hours a week now',
  'Slurry dry matter',
  'Press t per hour running',
  'Press hours a day',
  'Dried to dry matter',
  'Air m3 per hour',
  'Hot water temperature',
  'Hot water litres per hour',
  'Kit cost',
  'Power price per kWh',
  'Heat price per kWh',
  'Labour hours a week with kit',
  'Labour rate',
  'Cost per mastitis case',
] as const;

type HerdRow = readonly [name: string, ...rest: number[]];

export function inventedHerds(): readonly HerdRow[] {
  const next = numbers(20_261);
  const between = (low: number, high: number, step: number): number =>
    Number((low + step * Math.floor((next() * (high - low)) / step)).toFixed(4));
  return Array.from({ length: herdCount }, (_, k) => {
    const cows = between(120, 620, 5);
    return [
      `Herd ${k + 1}`,
      cows,
      Math.round(cows * between(0.92, 1.08, 0.01)),
      between(4, 10, 0.5),
      [0.5, 1, 1, 1, 2][Math.floor(5 * next())] as number,
      between(120, 240, 5),
      between(3, 10, 1),
      between(0.06, 0.1, 0.005),
      between(2, 7, 0.5),
      between(3, 14, 1),
      between(0.45, 0.62, 0.01),
      100 * Math.round(cows * between(0.04, 0.12, 0.01)),
      between(65, 88, 1),
      50 * Math.round(cows * between(0.1, 0.25, 0.01)),
      1000 * Math.round(40 + cows * between(0.12, 0.24, 0.01)),
      between(0.18, 0.32, 0.01),
      between(0, 0.08, 0.01),
      between(4, 12, 1),
      between(13, 20, 0.5),
      between(200, 420, 10),
    ];
  });
}
