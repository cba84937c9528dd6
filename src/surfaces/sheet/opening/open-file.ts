import { type Locale, registries, type WorkbookData } from '@odoo/o-spreadsheet';
import { wait } from '../page.ts';
import { bytesOf, readWorkbook, Unreadable } from '../readable.ts';
import { assemble } from './assemble.ts';
import { kindOf } from './kinds.ts';
import { whatIsLeftOut } from './left-out.ts';
import { inDigits } from './refusing.ts';
import type { Progress, WorkbookRead } from './workbook.ts';
import type { Answer, Asked } from './worker.ts';

const damaged = 'the file is damaged or no spreadsheet';

const source = (): string => document.getElementById('reader')?.textContent ?? '';

/** Reads a spreadsheet file in a thread of its own, so that the page stays free; gives nothing where that is stopped. */
function readBeside(asked: Asked, say: (progress: Progress) => void, stopped: AbortSignal): Promise<WorkbookRead | undefined> {
  const address = URL.createObjectURL(new Blob([source()], { type: 'text/javascript' }));
  const worker = new Worker(address);
  return new Promise<WorkbookRead | undefined>((found, failed) => {
    stopped.addEventListener('abort', () => found(undefined));
    worker.addEventListener('error', () => failed(new Unreadable(damaged)));
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      if ('progress' in data) say(data.progress);
      else if ('read' in data) found(data.read);
      else failed(new Unreadable(data.refused ?? damaged));
    });
    worker.postMessage(asked, [asked.bytes.buffer]);
  }).finally(() => {
    worker.terminate();
    URL.revokeObjectURL(address);
  });
}

/** So that what was said last is drawn before the page is busy. */
const drawn = (): Promise<unknown> => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));

async function openXlsx(name: string, bytes: Uint8Array<ArrayBuffer>, locale: Locale, show: (data: WorkbookData) => Promise<void>) {
  const stop = new AbortController();
  const waiting = wait(() => stop.abort());
  const functions = registries.functionRegistry.getKeys();
  waiting.say(`Opening ${name}…`);
  try {
    const say = ({ sheet, sheets, cells }: Progress): void =>
      waiting.say(`Opening ${name}: sheet ${sheet} of ${sheets}, ${inDigits(cells)} cells so far.`);
    const read = await readBeside({ bytes, functions }, say, stop.signal);
    if (!read) return undefined;
    waiting.hold();
    waiting.say(`Opening ${name}: all of it is read; its sheets are being drawn up, during which the page stands still.`);
    await drawn();
    const { data, losses } = assemble(read, locale);
    await show(data);
    return `${name} is open. ${whatIsLeftOut(losses, read.unknownFunctions) || 'All that its cells hold came along.'}`;
  } finally {
    waiting.close();
  }
}

/**
 * Opens a file that the user picked, whatever it is: a copy saved from this page or a spreadsheet. Gives what is to be said of
 * it, if anything; throws Unreadable with the reason, and then nothing on the page has changed.
 */
export async function openFile(file: File, locale: Locale, show: (data: WorkbookData) => Promise<void>): Promise<string | undefined> {
  const bytes = await bytesOf(file);
  const kind = kindOf(bytes);
  if (kind === 'xlsx') return openXlsx(file.name, bytes, locale, show);
  if (kind !== 'copy') throw new Unreadable(kind.is);
  await show(readWorkbook(new TextDecoder().decode(bytes)));
  return undefined;
}
