import { type ChildProcess, spawn } from 'node:child_process';
import { afterEach, expect, it } from 'vitest';

const running: ChildProcess[] = [];
afterEach(() => {
  for (const server of running.splice(0)) server.kill();
});

/** What `npm start` runs once all is built; gives the address that it prints. */
async function serve(): Promise<string> {
  const server = spawn(process.execPath, ['.build/serve.cjs'], { stdio: ['ignore', 'pipe', 'inherit'] });
  running.push(server);
  const line = await new Promise<string>((said) => server.stdout.once('data', (text: Buffer) => said(String(text))));
  const address = /http:\/\/localhost:\d+\//.exec(line)?.[0];
  if (!address) throw new Error(`no address was printed: ${line}`);
  return address;
}

it('npm start serves the sheet at the address that it prints, and lets no other site frame it', async () => {
  const address = await serve();
  const page = await fetch(address.replace('localhost', '127.0.0.1'));
  expect(await page.text()).toContain('<title>Bedding Ledger</title>');
  expect(page.headers.get('content-security-policy')).toBe("frame-ancestors 'none'");
  expect(page.headers.get('content-type')).toContain('text/html');
});

it('a second npm start takes the next free port', async () => {
  const [first, second] = [await serve(), await serve()];
  expect(second).not.toBe(first);
});
