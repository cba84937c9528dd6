import { describe, expect, test } from 'vitest';
import { cashFlow } from '../../src/domain/cash-flow.ts';
import { boughtCost } from '../../src/domain/cost.ts';
import { heaterEffectiveness, hotWaterHeat, mustBeHeated, supplyTemperature } from '../../src/domain/heater.ts';
import { breakEvenPrice } from '../../src/domain/investment.ts';
import { ovenDryMatter } from '../../src/domain/materials.ts';
import { heatSurplus } from '../../src/domain/plant.ts';
import { captureShare } from '../../src/domain/separation.ts';
import { carryover } from '../../src/domain/settling.ts';

const effectiveness = (supply_c: number, water_l_h: number) => () =>
  heaterEffectiveness(3200, 7, 0.85, supply_c, water_l_h, 80, 0, 'supply');
const borrowing = (years: number | undefined, rate: number | undefined) => () =>
  cashFlow(10_000, 3000, 3, 0.08, 0, 0, 0, 0, 0, 'pool', 'no', 5000, years, rate);

const sentenceOf = (call: () => unknown): string => {
  try {
    return `answered ${String(call())}`;
  } catch (thrown) {
    return (thrown as Error).message;
  }
};

describe('arguments that contradict each other are refused by name, with what is wrong and what to enter', () => {
  const refused: readonly (readonly [what: string, call: () => unknown, says: string])[] = [
    [
      'an engine that gives more than its fuel holds',
      () => heatSurplus(100, 0.5, 0.6, 0),
      'heat_efficiency: 0.6 and electric_efficiency 0.5 together are above 1; an engine gives no more than its fuel holds; enter shares that add up to less than 1',
    ],
    [
      'air colder behind the heater than before it',
      () => mustBeHeated(5, 7),
      'supply_c: 5 is below ambient_c 7; enter the temperature of the air after the heater',
    ],
    [
      'water no hotter than the air it is to warm',
      () => supplyTemperature(3200, 20, 0.6, 3000, 20, 0.85, 0, 'supply'),
      'water_c: 20 is not above ambient_c 20; enter the temperature of the hot water to the heater',
    ],
    [
      'water that comes back hotter than it went',
      () => hotWaterHeat(3000, 60, 80),
      'return_c: 80 is above flow_c 60; enter the temperature of the water that comes back cooled',
    ],
    [
      'air hotter than the water that warmed it',
      effectiveness(85, 3000),
      'supply_c: 85 is above water_c 80; check both thermometers: air cannot leave hotter than the water comes',
    ],
    [
      // By hand: 0.5 m³/h · 971.8 kg/m³ · 4.186 · 73 °C / 3600 = 41.2 kW; 3200/0.980 kg/h · 1.016 · 63 °C / 3600 = 58.0 kW.
      'more heat in the air than the water had',
      effectiveness(70, 500),
      'water_l_h: 500 litres/h gives off at most 41.2 kW, but the air took up 58.0 kW; check the water meter first, then the air flow and where it was measured',
    ],
    [
      // By hand: 41.2 kW as above; 3200/1.009 kg/h · 1.016 · 73 °C / 3600 = 65.3 kW.
      'air as hot as the water, from too little of it',
      effectiveness(80, 500),
      'water_l_h: 500 litres/h gives off at most 41.2 kW, but the air took up 65.3 kW; check the water meter first, then the air flow and where it was measured',
    ],
    [
      'haulage without the size of a load',
      () => boughtCost(100, 50, undefined, 10),
      'load_t: is missing although haulage is charged per load; enter what a load brings, in t',
    ],
    [
      'a loan without its years',
      borrowing(undefined, 0.07),
      'loan_years: is missing although money is borrowed; enter it, or leave borrowed at 0',
    ],
    [
      'a loan without its rate',
      borrowing(5, undefined),
      'loan_rate: is missing although money is borrowed; enter it, or leave borrowed at 0',
    ],
    [
      'a container heavier than what lies dried in it',
      () => ovenDryMatter(300, 105, 120.5),
      'container_g: 120.5 is not below dry_g 105; enter the empty container, and both weighings with it',
    ],
    [
      'a sample that gained weight in the oven',
      () => ovenDryMatter(300, 310, 0),
      'dry_g: 310 is above wet_g 300; a sample cannot gain weight by drying; check both weighings',
    ],
    [
      'a liquid no thinner than the slurry it came from',
      () => captureShare(0.08, 0.25, 0.08),
      'liquid_dm: 0.08 is not below slurry_dm 0.08; enter a dry matter below that of the slurry',
    ],
    [
      'a particle lighter than air',
      () => carryover(1, 1.1, 20),
      'particle_kg_m3: 1.1 is not above that of air; enter the density of the particle itself, not of a heap',
    ],
  ];

  test.each(refused)('%s', (_, call, says) => expect(sentenceOf(call)).toBe(says));
});

describe('what lies just at the edge is still answered', () => {
  test('an engine that turns all its fuel into heat and electricity', () => expect(heatSurplus(50, 0.5, 0.5, 0).surplus_kw).toBe(50));
  test('air that leaves the heater as warm as it came', () => expect(() => mustBeHeated(7, 7)).not.toThrow());
  test('air that leaves the heater as hot as the water', () => expect(effectiveness(80, 30_000)().effectiveness).toBe(1));
  test('a sample that was dry already', () => expect(ovenDryMatter(300, 300, 50).dm).toBe(1));
  test('bought-in bedding that breaks even at nothing', () => {
    expect(breakEvenPrice(1000, 10, -100, 10, 0, 0, 0).price_per_t).toBe(0);
    expect(breakEvenPrice(1000, 10, 150, 10, 0, 0, 0).price_per_t).toBe(25);
    expect(() => breakEvenPrice(1000, 10, -101, 10, 0, 0, 0)).toThrow(/^it pays even where bought-in bedding costs nothing$/);
  });
});
