/** Why a file is not opened, in words that follow `could not be opened:`. */
export class Refused extends Error {}

const plain = new Intl.NumberFormat('en-GB');

export const inDigits = (count: number): string => plain.format(count);

/** Names the limit that is met, with the file's number and the page's. */
export function atMost(count: number, limit: number, sentence: (count: string, limit: string) => string): void {
  if (count > limit) throw new Refused(sentence(inDigits(count), inDigits(limit)));
}
