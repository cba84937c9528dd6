import { type Block, blockOf, cellAt, columnLetters, referenceTo } from '../pane/addresses.ts';

export function addressOf({ top, left, bottom, right }: Block): string {
  return top === bottom && left === right ? cellAt(top, left) : `${cellAt(top, left)}:${cellAt(bottom, right)}`;
}

/** `A:C` for columns 0 to 2. */
export const wholeColumns = (left: number, right: number): string => [left, right].map(columnLetters).join(':');

/** Joins each block to the one before it where `joined` finds that the two make one. */
function join(blocks: Iterable<Block>, joined: (last: Block, next: Block) => Block | undefined): Block[] {
  const done: Block[] = [];
  for (const next of blocks) {
    const last = done.at(-1);
    const both = last && joined(last, next);
    if (both) done[done.length - 1] = both;
    else done.push(next);
  }
  return done;
}

/** Few blocks that hold just these cells: first those under each other become one, then such columns side by side. */
export function blocksOf(addresses: readonly string[]): Block[] {
  const cells = addresses.map((address) => blockOf(address) as Block).sort((a, b) => a.left - b.left || a.top - b.top);
  const columns = join(cells, (last, next) =>
    last.left === next.left && last.bottom + 1 === next.top ? { ...last, bottom: next.bottom } : undefined,
  ).sort((a, b) => a.top - b.top || a.bottom - b.bottom || a.left - b.left);
  return join(columns, (last, next) =>
    last.top === next.top && last.bottom === next.bottom && last.right + 1 === next.left ? { ...last, right: next.right } : undefined,
  );
}

/** Text in quotation marks, or a sheet's name and its `!`, whichever begins first. */
const textOrSheet = /"(?:[^"]|"")*"|(?:'((?:[^']|'')+)'|([\p{L}_][\p{L}\p{N}_.]*))!/gu;

/** The same formula where the sheets have other names. Text in quotation marks stays as it is. */
export function renameSheets(formula: string, newName: (name: string) => string): string {
  return formula.replace(textOrSheet, (found: string, quoted?: string, plain?: string) => {
    const name = quoted?.replaceAll("''", "'") ?? plain;
    return name === undefined ? found : referenceTo({ sheet: newName(name), address: '' });
  });
}
