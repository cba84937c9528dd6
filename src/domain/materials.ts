import figures from '../data/materials.json';

export type Material = keyof typeof figures;

/** The bedding materials known everywhere. */
export const materials = Object.keys(figures) as [Material, ...Material[]];
