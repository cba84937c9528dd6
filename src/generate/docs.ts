import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { registry } from '../functions/index.ts';
import { type Family, families, familyOf } from './docs/families.ts';
import { familyPage } from './docs/family-page.ts';
import { indexPage } from './docs/index-page.ts';
import { methodPage } from './docs/method-page.ts';
import { type Page, wholePage } from './docs/page.ts';
import { sourcesPage } from './docs/sources-page.ts';

/** The reference and the method note: every page, made from the records. */
export const docsPages = (): readonly Page[] => [
  indexPage(registry),
  ...(Object.keys(families) as Family[]).map((family) =>
    familyPage(
      family,
      registry.filter(({ name }) => familyOf(name) === family),
    ),
  ),
  methodPage(),
  sourcesPage(registry),
];

/** dist/docs: pages that open by a double click and print on A4. */
export async function writeDocs(): Promise<void> {
  const style = await readFile('src/generate/docs/docs.css', 'utf8');
  await mkdir('dist/docs', { recursive: true });
  await Promise.all(docsPages().map((page) => writeFile(`dist/docs/${page.file}`, wholePage(page, style))));
}
