import { spawnSync } from 'node:child_process';
import { mkdir, readFile } from 'node:fs/promises';
import { createServer } from 'node:https';
import { generateCertificates, getHttpsServerOptions } from 'office-addin-dev-certs';
import sirv from 'sirv';
import { headersFor } from './hosting.ts';
import { DEVELOPMENT_URL } from './manifests.ts';

/** Only these have a desktop Excel that the vendor's tool can reach. */
const hasExcel = process.platform === 'win32' || process.platform === 'darwin';

const byHand = `This computer has no Excel that can be reached from here. Excel on the web can use the add-in while this runs:
1. Open ${DEVELOPMENT_URL}about.html once in the same browser and accept the certificate.
2. In Excel on the web open a workbook, then Home > Add-ins > More Settings > Upload My Add-in.
3. Choose dist/manifest.xml from this folder and Upload.`;

/** The vendor's certificates for localhost. Where there is no Excel they are made but not added to what the computer trusts. */
async function certificates(): Promise<{ readonly cert: Buffer; readonly key: Buffer }> {
  if (hasExcel) {
    const { cert, key } = await getHttpsServerOptions();
    return { cert, key };
  }
  const folder = '.cache/certificates';
  await mkdir(folder, { recursive: true });
  await generateCertificates(`${folder}/ca.crt`, `${folder}/localhost.crt`, `${folder}/localhost.key`);
  return { cert: await readFile(`${folder}/localhost.crt`), key: await readFile(`${folder}/localhost.key`) };
}

/** The vendor's tool is fetched when it is needed, not kept: it brings a build step that fails on some computers. */
function sideload(command: 'start' | 'stop'): void {
  const options = command === 'start' ? ['desktop', '--no-debug'] : [];
  spawnSync('npx', ['--yes', 'office-addin-debugging@7.0.0', command, 'dist/manifest.xml', ...options], {
    stdio: 'inherit',
    shell: process.platform === 'win32',
    env: { ...process.env, npm_config_ignore_scripts: 'true' },
  });
}

/** `npm run excel`: serves dist over https where the development manifest expects it, and opens it in Excel where that can be done. */
async function serve(): Promise<void> {
  const files = sirv('dist', {
    dev: true,
    setHeaders(response, path) {
      for (const [name, value] of Object.entries(headersFor(path.slice(1)))) response.setHeader(name, value);
      if (!path.endsWith('.png')) response.setHeader('Cache-Control', 'no-cache');
    },
  });
  const server = createServer(await certificates(), files);
  server.listen(Number(new URL(DEVELOPMENT_URL).port), '127.0.0.1', () => {
    console.log(`Serving dist at ${DEVELOPMENT_URL} (stop with Ctrl+C)`);
    if (hasExcel) sideload('start');
    else console.log(byHand);
  });
  process.once('SIGINT', () => {
    if (hasExcel) sideload('stop');
    process.exit();
  });
}

await serve();
