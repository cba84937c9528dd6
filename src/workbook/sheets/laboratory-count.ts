/** How laboratories write a count. */
export const countUnits = ['per cm³', 'per ml', 'per g', 'log10 per cm³', 'log10 per ml', 'log10 per g'] as const;

export const countedGerms = ['coliforms', 'klebsiella', 'streptococci', 'staphylococci'] as const;

/** A count as the laboratory wrote it, as a number per cm³ or ml; per gram, by the density of the sample as it lay. */
export const perVolume = (count: string, unit: string, density: string): string =>
  `IF(LEFT(${unit},3)="log",10^${count},${count})*IF(RIGHT(${unit},2)=" g",${density}/1000,1)`;

/** Whether a count is so small that it is likelier to be a logarithm. */
export const looksLikeLog = (count: string, unit: string): string => `AND(ISNUMBER(${count}),${count}<12,LEFT(${unit},3)="per",${count}>0)`;
