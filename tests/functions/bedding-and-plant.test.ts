import { expect, test } from 'vitest';
import { call } from '../../src/core/call.ts';
import { CellError } from '../../src/core/result.ts';
import { explain } from '../../src/core/working.ts';
import { demand } from '../../src/functions/demand.ts';
import { fibre } from '../../src/functions/fibre.ts';
import { material } from '../../src/functions/material.ts';
import { plant } from '../../src/functions/plant.ts';

const records = [...demand, ...material, ...fibre, ...plant];

function ask(name: string, ...args: unknown[]) {
  const record = records.find((each) => each.name === name);
  if (!record) throw new Error(`no function ${name}`);
  return call(record, args);
}
const one = (name: string, ...args: unknown[]) => ask(name, ...args)[0]?.[0];
const said = (name: string, ...args: unknown[]) => {
  const cell = one(name, ...args);
  return cell instanceof CellError ? `${cell.code} ${cell.message}` : cell;
};

test('a dry matter typed as a whole per cent is refused with the figure to type instead', () => {
  expect(said('FIBRE.CAKE', 10, 0.08, 35, 0.3)).toBe('#VALUE! cake_dm (fraction): 35 is above 1; enter 35% or 0.35');
});

test('a dry matter that slipped twice through a per-cent cell is refused with the question', () => {
  expect(said('FIBRE.CAKE', 10, 0.0008, 0.35, 0.3)).toMatch(
    /slurry_dm \(fraction\): 0.0008: is this a fraction typed into a per-cent cell\?/,
  );
  expect(said('MATERIAL.DRIEDDENSITY', 300, 0.0035, 0.58)).toMatch(/dm_in \(fraction\): 0.0035: is this a fraction typed/);
});

test('thin liquid from a press is no slip', () => {
  expect(one('FIBRE.CAPTURE', 0.02, 0.3, 0.008)).toBeTypeOf('number');
});

test('a depth typed in centimetres is refused', () => {
  expect(said('DEMAND.DEPTH', 1.8, 1.2, 5)).toBe('#VALUE! depth_m (m): 5 is above 1; enter a number above 0, at most 1');
});

test('a whole column of herds is answered at once, a bad one in its own cell', () => {
  const answers = ask('DEMAND.HERD', [[100], [-5], [300]], [[9.6], [2], [null]]);
  expect(answers[0]?.[0]).toBeCloseTo(350.4, 9);
  expect(answers[1]?.[0]).toBeInstanceOf(CellError);
  expect(answers[2]?.[0]).toHaveProperty('message', expect.stringContaining('kg_cubicle_day (kg/day): is missing'));
});

test('a blank loss means none, not an error', () => {
  expect(one('DEMAND.HERD', 100, 9.6, 365, '')).toBeCloseTo(350.4, 9);
});

test('materials are known in any case and with spaces round them', () => {
  expect(one('MATERIAL.DENSITY', ' Sawdust ')).toBe(178);
  expect(said('MATERIAL.DENSITY', 'peat')).toMatch(/"peat" is not one of the choices; enter one of sawdust, shavings, chopped straw, sand/);
});

test('a material without a figure is #N/A and says what to measure', () => {
  expect(said('MATERIAL.DENSITY', 'digested fibre')).toBe('#N/A no figure is held for digested fibre: weigh a bucket of known volume');
  expect(said('MATERIAL.DRYMATTER', 'composted fibre')).toMatch(/^#N\/A .*test a sample/);
});

test('the working of a looked-up figure says where it was found and how far to trust it', () => {
  const record = material.find(({ name }) => name === 'MATERIAL.DENSITY') as (typeof material)[number];
  const steps = Object.fromEntries(explain(record, ['sawdust']).map(({ step, value }) => [step, value]));
  expect(steps).toMatchObject({
    found_in: expect.stringMatching(/^Ahn and others 2016 \(also 208 in Ahn and others 2020, seen/),
    trust: 'seen',
    density_kg_m3: 178,
  });
});

test('the table of materials and that of stages start with their header', () => {
  expect(ask('MATERIAL.TABLE')[0]).toEqual(['material', 'density', 'dry matter', 'kg per cow per day', 'source', 'status']);
  const stages = ask('PLANT.CAPACITY', 1, 2, 0.5, 4, 0.3, 0.6, 50, 20);
  expect(stages[0]).toEqual(['stage', 'dried t per day', 'cover', 'binds']);
  expect(stages.slice(1)).toEqual([
    ['slurry', 1, 1, 'binds'],
    ['press', 1, 1, ''],
    ['dryer', 1, 1, ''],
  ]);
});

test('an engine without heat to spare is #N/A with the reason', () => {
  expect(said('PLANT.HEATSURPLUS', 100, 0.4, 0.4, 150)).toMatch(/^#N\/A no heat is left over/);
});
