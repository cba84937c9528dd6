import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { findOffice } from '../browser/find-office.ts';

/** Office works every formula out as it opens a file, whatever value is kept beside it (its own setting, by its own name). */
const recalculating = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

/** The rows of a CSV file with `;` between its cells. */
const rowsOf = (csv: string): readonly (readonly string[])[] =>
  csv
    .split('\n')
    .map((line) =>
      [...line.matchAll(/(?:^|;)(?:"((?:[^"]|"")*)"|([^;]*))/g)].map(([, text, bare]) => text?.replaceAll('""', '"') ?? bare ?? ''),
    );

/** A share is written out as a percentage where its cell shows one. */
function cellValue(cell: string): unknown {
  const [, number = cell, percent] = /^(-?[\d.]+(?:E[-+]?\d+)?)(%)$/.exec(cell) ?? [];
  if (number !== '' && Number.isFinite(Number(number))) return Number(number) / (percent ? 100 : 1);
  return /^#|^Err:/.test(cell) ? `#${cell}` : cell;
}

/** Of a file by its place: what a sheet says, the second column by the first. */
export type Recalculated = (file: number, sheet?: string) => ReadonlyMap<string, unknown>;

/** Opens all files in LibreOffice at once and works them out anew. @param sheet the one that is asked for, counted from 1; -1 for all */
export function recalculated(files: readonly string[], folder: string, sheet: number): Recalculated {
  const [profile, out] = [join(folder, 'recalculating'), join(folder, 'recalculated')];
  mkdirSync(join(profile, 'user'), { recursive: true });
  writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), recalculating);
  // Cells between `;` (59), texts in quotes (34), UTF-8 (76), values and not what is shown of them, one sheet.
  const csv = `csv:Text - txt - csv (StarCalc):59,34,76,1,,0,true,false,false,false,false,${sheet}`;
  execFileSync(findOffice(), [`-env:UserInstallation=file://${profile}`, '--headless', '--convert-to', csv, '--outdir', out, ...files], {
    stdio: 'ignore',
  });
  return (file, name = 'Figures') => {
    const made = readFileSync(join(out, `${basename(files[file] as string, '.xlsx')}-${name}.csv`), 'utf8');
    return new Map(rowsOf(made).map(([key = '', value = '']) => [key, cellValue(value)]));
  };
}
