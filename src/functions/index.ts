import type { FunctionRecord } from '../core/define.ts';
import { demand } from './demand.ts';

/** Every function, in the order in which users meet them. All lists of functions are made from this one. */
export const registry: readonly FunctionRecord[] = [...demand];
