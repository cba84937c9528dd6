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

const cellValue = (cell: string): unknown =>
  cell !== '' && Number.isFinite(Number(cell)) ? Number(cell) : /^#|^Err:/.test(cell) ? `#${cell}` : cell;

/** Opens all files in LibreOffice at once, works them out anew and reads their Figures: the second column by the first. */
export function recalculated(files: readonly string[], folder: string, sheet: number): readonly ReadonlyMap<string, unknown>[] {
  const [profile, out] = [join(folder, 'recalculating'), join(folder, 'recalculated')];
  mkdirSync(join(profile, 'user'), { recursive: true });
  writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), recalculating);
  // Cells between `;` (59), texts in quotes (34), UTF-8 (76), values and not what is shown of them, one sheet.
  const csv = `csv:Text - txt - csv (StarCalc):59,34,76,1,,0,true,false,false,false,false,${sheet}`;
  execFileSync(findOffice(), [`-env:UserInstallation=file://${profile}`, '--headless', '--convert-to', csv, '--outdir', out, ...files], {
    stdio: 'ignore',
  });
  return files.map((file) => {
    const made = readFileSync(join(out, `${basename(file, '.xlsx')}-Figures.csv`), 'utf8');
    return new Map(rowsOf(made).map(([key = '', value = '']) => [key, cellValue(value)]));
  });
}
