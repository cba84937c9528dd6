import { Model } from '@odoo/o-spreadsheet';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';
import { register } from '../../src/surfaces/excel/register.ts';
import { installCustomFunctions } from '../../src/surfaces/sheet/host.ts';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { toGrid } from '../../src/surfaces/sheet/to-grid.ts';
import type { Workbook } from '../../src/workbook/model.ts';

installCustomFunctions(functionsFile(registry));
register(registry);

/** The workbook in the grid's engine, worked out without a page. */
export const evaluate = (workbook: Workbook): Model => new Model(toGrid(workbook, locales[0]));
