import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { Script } from 'node:vm';
import { gzipSync } from 'node:zlib';
import { compare, type Row } from './measure.ts';

let times = 0;

/** Compiles and runs a script as if it had never been seen: the engine keeps what it compiled by the script's text. */
function fresh(path: string): () => unknown {
  const source = readFileSync(path, 'utf8');
  return () => new Script(`${source}\n//${++times}`).runInThisContext();
}

function loading(): Row {
  const [ours = 0, theirs = 0] = compare([fresh('dist/functions.js'), fresh('.build/zod.js')]);
  return { name: 'Load and register', ours, theirs, unit: 'ms', target: 1.3, note: 'dist/functions.js / zod alone, both minified' };
}

const kilobytes = (path: string): number => gzipSync(readFileSync(path), { level: 9 }).length / 1000;

const sizeOf = (path: string, limit: number, note: string): Row => ({
  name: `${path}, gzip`,
  ours: kilobytes(path),
  theirs: limit,
  unit: 'kB',
  target: 1,
  note,
});

/** Most memory that a process of its own ever held for one call over 100,000 rows. */
const peak = (side: 'ours' | 'bare'): number => Number(execFileSync(process.execPath, [process.argv[1] as string, side])) / 1000;

const memory = (): Row => ({
  name: 'Peak memory, 100,000 rows',
  ours: peak('ours'),
  theirs: peak('bare'),
  unit: 'MB',
  target: 1.5,
  note: 'whole process, DRYING.EVAPORATION / bare loop',
});

export const start = (): Row[] => [
  loading(),
  sizeOf(
    'dist/functions.js',
    60,
    'size / limit; no schema library and nothing that no cell shows is in it; two thirds of the rest are words that cells do show, the bibliography 7 kB of them, and every function added brings about half a kB',
  ),
  sizeOf('dist/bedding-ledger.html', 800, 'size / limit; the grid’s own unmodified files are 700 kB of it'),
  memory(),
];
