import type { FunctionRecord } from '../core/define.ts';
import { budgetFamily } from './budget.ts';
import { demand } from './demand.ts';
import { fibre } from './fibre.ts';
import { material } from './material.ts';
import { plant } from './plant.ts';
import { workingOf } from './working.ts';

const explained: readonly FunctionRecord[] = [...demand, ...material, ...fibre, ...plant, ...budgetFamily];

/** Every function, in the order in which users meet them. All lists of functions are made from this one. */
export const registry: readonly FunctionRecord[] = [...explained, workingOf(explained)];
