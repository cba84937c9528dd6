/** What every function's name begins with in a formula: `=BEDDING.DEMAND.HERD(…)`. */
export const namespace = 'BEDDING';
export const prefix = `${namespace}.`;
