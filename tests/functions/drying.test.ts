import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { CellError } from '../../src/core/result.ts';
import { drying } from '../../src/functions/drying.ts';

const named = (name: string) => drying.find((record) => record.name === `DRYING.${name}`) as FunctionRecord;
const cell = (name: string, ...args: unknown[]) => call(named(name), args)[0]?.[0];
const column = (values: readonly unknown[]) => values.map((value) => [value]);

const AIR = [3200, 7, 0.85, 69] as const;

describe('what the air is measured at', () => {
  it('is the hot side unless the sheet says otherwise, in any case and with stray spaces', () => {
    expect(cell('EVAPORATION', ...AIR)).toBe(cell('EVAPORATION', ...AIR, null, ' Supply '));
    // Cold air is denser: the same cubic metres carry more.
    expect(cell('EVAPORATION', ...AIR, null, 'Ambient')).toBeGreaterThan(cell('EVAPORATION', ...AIR) as number);
    expect(cell('EVAPORATION', ...AIR, 0, 'outside')).toMatchObject({ message: expect.stringContaining('enter supply or ambient') });
  });
});

it.each(['HEAT', 'EVAPORATION', 'EXHAUST'])(
  '%s asks whether an altitude between 0 and 1 is a humidity, and takes 0 and a pit below the sea',
  (name) => {
    expect(cell(name, ...AIR, 0.75)).toMatchObject({
      code: '#VALUE!',
      message: expect.stringContaining('altitude_m (m): 0.75: is this a humidity?; enter'),
    });
    for (const altitude_m of [0, 1, -300]) expect(cell(name, ...AIR, altitude_m)).not.toBeInstanceOf(CellError);
  },
);

it('works the months out from one formula, and the month that dries nothing has its reason in its own cell', () => {
  const temperatures = column([2, 5, 9, 16]);
  const humidities = column([0.9, 0.85, 0.8, 0.95]);
  const supply = column([68, 69, 70, 16]);
  const answer = call(named('EVAPORATION'), [3200, temperatures, humidities, supply]);
  expect(answer).toHaveLength(4);
  for (const [month] of answer.slice(0, 3)) expect(month).toBeGreaterThan(35);
  expect(answer[3]?.[0]).toMatchObject({ code: '#N/A', message: expect.stringContaining('this air carries nothing off') });
});

it('answers an exhaust that carries nothing off with one reason in place of the table', () => {
  expect(call(named('EXHAUST'), [3200, 10, 0.95, 10])).toMatchObject([
    [{ code: '#N/A', message: expect.stringContaining('carries nothing off') }],
  ]);
});

it('tells a per cent from a fraction, in the humidity as in the dry matter', () => {
  expect(cell('HEAT', 3200, 7, 85, 69)).toMatchObject({ message: 'ambient_rh (fraction): 85 is above 1; enter 85% or 0.85' });
  expect(cell('OUTPUT', 35, 0.6, ...AIR)).toMatchObject({ message: 'dm_in (fraction): 35 is above 1; enter 35% or 0.35' });
});

it('refuses a mass below nothing', () => {
  for (const balance of ['WATER', 'YIELD'])
    expect(cell(balance, -100, 0.3, 0.9)).toMatchObject({ code: '#VALUE!', message: expect.stringContaining('-100 is below 0') });
});

it('takes any material in WATER and YIELD, but in OUTPUT no fibre drier than is known', () => {
  expect(cell('WATER', 100, 0.75, 0.9)).toBeCloseTo(20, 9);
  expect(cell('OUTPUT', 0.35, 0.9, ...AIR)).toMatchObject({
    code: '#VALUE!',
    message: 'dm_out (fraction): 0.9 is above 0.80, and no sorption data is held for fibre that dry; enter at most 0.80',
  });
});

it('catches a supplier who states ten times what the air can carry', () => {
  // 3 m³/h at 250 kg/m³ from 35.5 % to 61.5 % on 2,800 m³/h: common practice, no source.
  expect(cell('CLAIM', 3 * 250, 0.355, 0.615, 2800, 10, 0.8, 72)).toBeGreaterThan(10);
});

it('says where each default of the air and the dryer comes from', () => {
  const statuses = Object.fromEntries(
    named('EVAPORATION').parameters.flatMap(({ name, fallback }) => (fallback ? [[name, fallback.status]] : [])),
  );
  expect(statuses).toEqual({
    altitude_m: 'judgement',
    air_at: 'judgement',
    exhaust_rh: 'memory',
    heat_loss: 'judgement',
    feed_c: 'judgement',
  });
});
