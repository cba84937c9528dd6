import { registries } from '@odoo/o-spreadsheet';
import { beforeAll, expect, it } from 'vitest';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';
import { register } from '../../src/surfaces/excel/register.ts';
import { writeHelpIn } from '../../src/surfaces/sheet/argument-help.ts';
import { installCustomFunctions } from '../../src/surfaces/sheet/host.ts';

const file = functionsFile(registry);
beforeAll(() => {
  installCustomFunctions(file);
  register(registry);
});

it.each(file.functions.map((one) => [one.name, one] as const))(
  'the grid knows what each argument of %s takes, to tell it while it is typed',
  (name, { parameters }) => {
    const { args } = registries.functionRegistry.get(`BEDDING.${name}`);
    expect(args.map((arg) => [arg.name, arg.description])).toEqual(parameters.map((parameter) => [parameter.name, parameter.description]));
  },
);

it('the help of a function keeps its unit or its columns in every locale, and comes back in English as it was', () => {
  const description = (name: string) => registries.functionRegistry.get(`BEDDING.${name}`).description;
  const [unit, columns] = ['DEMAND.HERD', 'INVEST.LOAN'].map(description);
  expect(unit).toMatch(/Unit: t\/year\.$/);
  expect(columns).toContain('Gives a table: year, opening, interest, repaid, closing.');
  for (const locale of ['de-DE', 'en-GB']) {
    writeHelpIn(locale);
    expect(['DEMAND.HERD', 'INVEST.LOAN'].map(description)).toEqual([unit, columns]);
  }
});
