import face from './face.json';
import type { Look } from './look.ts';

/**
 * How large a text is in the face that the page carries (face.json: advance widths of Arimo 1.33, out of the font's `hmtx`
 * table). Kerning is left out there as here, so a width is the sum of its letters' and the same on every machine.
 */
const widthsOf = (byWidth: Readonly<Record<string, string>>): ReadonlyMap<string, number> =>
  new Map(
    Object.entries(byWidth).flatMap(([width, letters]) => [...letters].map((letter) => [letter, Number(width) / face.perEm] as const)),
  );
const regular = widthsOf(face.regular);
const bold = widthsOf(face.bold);
/** A letter that the face lacks comes from a face that is not known: as wide as high is wide enough for any. */
const UNKNOWN = 1;

type Type = Pick<Look, 'bold' | 'fontSize'>;

/** The letters of a cell whose style says nothing else. */
export const USUAL_POINTS = 10;
/** The grid draws letters of whole pixels, at 96 to the inch. */
const letterHeight = ({ fontSize = USUAL_POINTS }: Type): number => Math.round((fontSize * 96) / 72);

/** Pixels from the first letter's edge to the last one's. */
export function textWidth(text: string, type: Type): number {
  const widths = type.bold ? bold : regular;
  let ems = 0;
  for (const letter of text) ems += widths.get(letter) ?? regular.get(letter) ?? UNKNOWN;
  return ems * letterHeight(type);
}

/** Lines of a text that wraps in so many pixels, broken as the grid breaks it: at spaces, and within a word only where it must. */
export function linesIn(text: string, pixels: number, type: Type): number {
  let lines = 0;
  for (const paragraph of text.split('\n')) {
    let used = 0;
    lines++;
    for (const word of paragraph.split(' ')) {
      const wide = textWidth(used === 0 ? word : ` ${word}`, type);
      if (used + wide <= pixels) {
        used += wide;
        continue;
      }
      if (used > 0) lines++;
      used = textWidth(word, type);
      while (used > pixels) {
        lines++;
        used -= pixels;
      }
    }
  }
  return lines;
}

/** Ascent and descent of the face, of its `hhea` table, as browsers round them. */
const boxHeight = (type: Type): number => Math.round(0.905 * letterHeight(type)) + Math.round(0.212 * letterHeight(type));

/** The height of a row of one line. */
export const ROW = 23;

/** What the grid leaves free beside a text, on both sides together, and above and below. */
export const BESIDE = 8;
const ABOVE_AND_BELOW = 6;
const BETWEEN_LINES = 4;

/** The row that so many lines need: as high as the grid itself makes it for a text that was typed. */
export const heightOf = (lines: number, type: Type): number => lines * (boxHeight(type) + BETWEEN_LINES) - BETWEEN_LINES + ABOVE_AND_BELOW;
