import type { FunctionRecord } from '../core/define.ts';
import { budgetFamily } from './budget.ts';
import { cost } from './cost.ts';
import { demand } from './demand.ts';
import { drying } from './drying.ts';
import { fibre } from './fibre.ts';
import { hygiene } from './hygiene.ts';
import { invest } from './invest.ts';
import { material } from './material.ts';
import { plant } from './plant.ts';
import { reference } from './reference.ts';
import { udder } from './udder.ts';
import { welfare } from './welfare.ts';
import { workingOf } from './working.ts';

const explained: readonly FunctionRecord[] = [
  ...demand,
  ...material,
  ...fibre,
  ...drying,
  ...plant,
  ...cost,
  ...invest,
  ...hygiene,
  ...udder,
  ...welfare,
  ...budgetFamily,
  ...reference,
];

/** Every function, in the order in which users meet them. All lists of functions are made from this one. */
export const registry: readonly FunctionRecord[] = [...explained, workingOf(explained)];
