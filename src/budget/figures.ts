import type { Figure } from './figure.ts';
import { kitFigures, needsFigures } from './figures-kit.ts';
import { furtherMoneyFigures, moneyFigures } from './figures-money.ts';
import { standingFigures } from './figures-standing.ts';
import { alsoFigures, claimsFigures, udderFigures } from './figures-udder.ts';

const entries = [
  ...needsFigures,
  ...kitFigures,
  ...moneyFigures,
  ...udderFigures,
  ...claimsFigures,
  ...furtherMoneyFigures,
  ...alsoFigures,
  ...standingFigures,
] as const;

/** A row of the answer by its key: a key without an entry does not compile. */
export type FigureKey = (typeof entries)[number]['key'];

/** Every figure, in the order of the answer's rows. Keys and their order are fixed: workbooks look them up. */
export const figures: readonly Figure<FigureKey>[] = entries;

const byKey = new Map<string, Figure>(figures.map((figure) => [figure.key.toLowerCase(), figure]));

/** The figure of that key. */
export const figureByKey = (key: FigureKey): Figure => byKey.get(key.toLowerCase()) as Figure;

/** The figure that a user means, whatever the case and outer spaces. */
export const figureCalled = (key: unknown): Figure | undefined => byKey.get(String(key).trim().toLowerCase());
