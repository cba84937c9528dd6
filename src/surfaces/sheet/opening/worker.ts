import { Refused } from './refusing.ts';
import { type Progress, readXlsx, type WorkbookRead } from './workbook.ts';

/** What the page asks of the worker, and what it hears from it. */
export interface Asked {
  readonly bytes: Uint8Array;
  readonly functions: readonly string[];
}
export type Answer = { readonly progress: Progress } | { readonly read: WorkbookRead } | { readonly refused: string | undefined };

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const answer = (said: Answer): void => postMessage(said);
  try {
    answer({ read: readXlsx(data.bytes, new Set(data.functions), (progress) => answer({ progress })) });
  } catch (fault) {
    answer({ refused: fault instanceof Refused ? fault.message : undefined });
  }
});
