import { cpus, loadavg } from 'node:os';
import { engine } from './engine.ts';
import { exhaustBalance, internalRates, probability } from './equations.ts';
import { growth } from './growth.ts';
import type { Row } from './measure.ts';
import { pageReady } from './page.ts';
import { callOnce, ranges } from './ranges.ts';
import { start } from './start.ts';

/** A figure to three digits. */
const three = (value: number): string => String(Number(value.toPrecision(3)));

function line({ name, ours, theirs, unit, target, faster, note }: Row): string[] {
  const ratio = faster ? theirs / ours : ours / theirs;
  const met = faster ? ratio >= target : ratio <= target;
  const wanted = faster ? `≥ ${target} faster` : `≤ ${target}`;
  return [name, `${three(ours)} ${unit}`, `${three(theirs)} ${unit}`, ratio.toFixed(2), wanted, met ? 'met' : 'missed', note];
}

function print(table: readonly (readonly string[])[]): void {
  const widths = table[0]?.map((_, k) => Math.max(...table.map((row) => row[k]?.length ?? 0))) ?? [];
  for (const row of table)
    console.log(
      row
        .map((cell, k) => cell.padEnd(widths[k] ?? 0))
        .join('  ')
        .trimEnd(),
    );
}

async function all(): Promise<void> {
  const rates = internalRates();
  const rows = [...ranges(), exhaustBalance(), ...rates.rows, probability(), ...growth(), ...start(), ...(await pageReady()), ...engine()];
  print([['what', 'ours', 'theirs', 'ratio', 'target', '', 'what is compared'], ...rows.map(line)]);
  console.log(`\nInternal rates that one of them gets wrong:\n${rates.wrong.join('\n')}`);
  console.log(`\n${cpus().length} × ${cpus()[0]?.model}, Node ${process.version}, load ${loadavg().map(three).join(' ')}`);
}

const [, , side] = process.argv;
if (side) console.log(callOnce(side === 'ours'));
else void all();
