import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { findOrInstall, onPath, runnable } from './install.ts';

const elsewhere = ['/Applications/LibreOffice.app/Contents/MacOS/soffice', 'C:\\Program Files\\LibreOffice\\program\\soffice.exe'];

/** LibreOffice: what we save must open in a program that is not ours. */
export const findOffice = (): string =>
  findOrInstall(
    () => [...onPath('soffice'), ...elsewhere].find(runnable),
    ['libreoffice-calc'],
    'LibreOffice was found nowhere and could not be installed. Install it (its Calc is enough) and test again.',
  );

/** Opens a file in LibreOffice and saves it as another kind in the same folder. */
export function convert(file: string, kind: string, folder: string): void {
  const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
  execFileSync(findOffice(), [profile, '--headless', '--convert-to', kind, '--outdir', folder, file], { stdio: 'ignore' });
}
