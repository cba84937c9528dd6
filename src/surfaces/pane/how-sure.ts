import type { Readable } from './inputs-sheet.ts';

const sheetName = /^How sure( \(\d+\))?$/i;
/** How the sentences begin in which that sheet sums itself up, above everything else on it. */
const begin = ['Of many plans drawn', 'Most would be told by:'] as const;

/** How likely the plan covers and pays, and what to measure next, in the words of the sheet How sure; none where it has none. */
export async function readHowSure(host: Readable): Promise<readonly string[]> {
  const sheet = (await host.sheetNames()).find((name) => sheetName.test(name));
  if (sheet === undefined) return [];
  const rows = await host.read({ sheet, address: 'A1:A14' });
  return begin.flatMap((words) => rows.flatMap(([cell]) => (String(cell?.value ?? '').startsWith(words) ? [String(cell?.value)] : [])));
}
