import { writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { writeExcelFiles } from './excel-files.ts';
import { hostingTable } from './hosting.ts';

/** `npm run package -- --url https://…`: dist as it goes to a static host, with a table of what to serve how. */
async function packageFor(url: string | undefined): Promise<void> {
  if (!url) throw new Error('Say where the files will be served: npm run package -- --url https://your.host/folder');
  await writeExcelFiles(url);
  const table = await hostingTable('dist', url);
  await writeFile('dist/HOSTING.md', table);
  console.log(table);
}

try {
  await packageFor(parseArgs({ options: { url: { type: 'string' } } }).values.url);
} catch (fault) {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
}
