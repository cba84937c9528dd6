import { copyFile, mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import packageJson from '../../package.json';
import { aboutPage, functionsPage, taskpanePage } from './excel-pages.ts';
import { unifiedManifest, xmlManifest } from './manifests.ts';

/** Everything in dist that is there for Excel and is not a bundle, for files served at that address. */
export async function writeExcelFiles(url: string): Promise<void> {
  const release = { url, version: packageJson.version };
  const made = {
    'manifest.xml': xmlManifest(release),
    'manifest.json': `${JSON.stringify(unifiedManifest(release), null, 2)}\n`,
    'functions.html': functionsPage(),
    'taskpane.html': taskpanePage(),
    'about.html': aboutPage(release.version, await readFile('LICENSE', 'utf8')),
  };
  await mkdir('dist/icons', { recursive: true });
  const icons = (await readdir('manifest/icons')).filter((name) => name.endsWith('.png'));
  await Promise.all([
    ...Object.entries(made).map(([name, content]) => writeFile(`dist/${name}`, content)),
    ...icons.map((name) => copyFile(`manifest/icons/${name}`, `dist/icons/${name}`)),
  ]);
}
