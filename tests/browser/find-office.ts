import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { attempt } from './find-browser.ts';

const elsewhere = ['/Applications/LibreOffice.app/Contents/MacOS/soffice', 'C:\\Program Files\\LibreOffice\\program\\soffice.exe'];

const installed = (): string | undefined =>
  [...(process.env['PATH'] ?? '').split(delimiter).map((folder) => join(folder, 'soffice')), ...elsewhere].find((path) => existsSync(path));

/** LibreOffice, installed first where there is none, as for the browser: what we save must open in a program that is not ours. */
export function findOffice(): string {
  const found = installed();
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    attempt('apt-get', 'update');
    attempt('apt-get', 'install', '-y', '--no-install-recommends', 'libreoffice-calc');
  }
  const now = installed();
  if (now) return now;
  throw new Error('LibreOffice was found nowhere and could not be installed. Install it (its Calc is enough) and test again.');
}

/** Opens a file in LibreOffice and saves it as another kind in the same folder. */
export function convert(file: string, kind: string, folder: string): void {
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
  execFileSync(findOffice(), [profile, '--headless', '--convert-to', kind, '--outdir', folder, file], { stdio: 'ignore' });
}
