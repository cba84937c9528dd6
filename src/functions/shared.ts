import { choice, number } from '../core/parameters.ts';
import { materials } from '../domain/materials.ts';

/** Parameters that functions of several families take, declared once. */

/** Dry matter of anything but slurry; below 0.05 it is a slip, such as 0.35 typed into a per-cent cell. */
export const dryMatter = <const Name extends string>(name: Name, says: string) => number(name, 'fraction', says, { min: 0.05 });

/** Dry matter of slurry and of the liquid from a press. */
export const slurryDryMatter = <const Name extends string>(name: Name, says: string) => number(name, 'fraction', says, { min: 0.005 });

export const material = <const Name extends string>(name: Name, says: string) => choice(name, says, materials);
