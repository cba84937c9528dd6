import { writeFile } from 'node:fs/promises';
import { functionsFile } from '../core/metadata.ts';
import { registry } from '../functions/index.ts';
import { writeDocs } from './docs.ts';
import { writeExcelFiles } from './excel-files.ts';
import { DEVELOPMENT_URL } from './manifests.ts';
import { writeSheetPages } from './sheet-pages.ts';

/** The second half of `npm run build`: everything in dist that is not a bundle, made from the records. Runs in the project's folder. */
async function generate(): Promise<void> {
  await writeFile('dist/functions.json', JSON.stringify(functionsFile(registry), null, 1));
  await writeSheetPages();
  await writeDocs();
  await writeExcelFiles(DEVELOPMENT_URL);
}

await generate();
