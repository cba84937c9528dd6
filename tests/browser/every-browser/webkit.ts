import { type ChildProcess, spawn } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { type AddressInfo, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { vi } from 'vitest';
import { patience } from '../../patience.ts';
import { findWebKit } from '../find-browser.ts';
import type { Engine, Key, Tab } from './driver.ts';
import { newFile } from './new-file.ts';
import { watchedCopies } from './watched-copy.ts';

/** WebDriver's own numbers for keys that write nothing (W3C WebDriver, 17.4.2 Keyboard Actions). */
const codes: Readonly<Record<Key, string>> = { Enter: '\uE007', Escape: '\uE00C', F6: '\uE036', Tab: '\uE004' };

/** Without this the smallest browser's own buttons make its window wider than a telephone. */
const noButtons =
  'button, entry, image, label { min-width: 0; min-height: 0; margin: 0; padding: 0; font-size: 1px; -gtk-icon-size: 1px; }';

/** A screen in memory, and its number. */
async function startScreen(program: string): Promise<{ readonly process: ChildProcess; readonly display: string }> {
  const screen = spawn(program, ['-displayfd', '3', '-screen', '0', '1500x1100x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const display = await new Promise<string>((told, failed) => {
    let said = '';
    screen.stdio[3]?.on('data', (text: Buffer) => {
      said += text;
      if (said.includes('\n')) told(`:${said.trim()}`);
    });
    screen.once('exit', () => failed(new Error('Xvfb did not start')));
  });
  return { process: screen, display };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const { port } = server.address() as AddressInfo;
  await new Promise((closed) => server.close(closed));
  return port;
}

type Ask = <Answer = unknown>(method: string, path: string, body?: object) => Promise<Answer>;

/** Speaks WebDriver, the W3C's protocol: plain JSON over HTTP. */
const speaker = (address: string): Ask => {
  return async <Answer>(method: string, path: string, body?: object) => {
    const asked = { method, signal: AbortSignal.timeout(patience.wait), ...(body && { body: JSON.stringify(body) }) };
    const { value } = (await (await fetch(address + path, asked)).json()) as { value: { error?: string; message?: string } | null };
    if (value?.error) throw new Error(`${path}: ${value.error}: ${value.message}`);
    return value as Answer;
  };
};

function drive(ask: Ask, addressOf: (page: string) => Promise<string>, downloads: string): Tab {
  const pressAll = (keys: readonly string[]) => {
    const actions = keys.flatMap((value) => [
      { type: 'keyDown', value },
      { type: 'keyUp', value },
    ]);
    return ask<void>('POST', '/actions', { actions: [{ type: 'key', id: 'keyboard', actions }] });
  };
  const find = async (css: string): Promise<string> =>
    Object.values(await ask<Record<string, string>>('POST', '/element', { using: 'css selector', value: css }))[0] as string;
  return {
    open: async (page) => ask('POST', '/url', { url: await addressOf(page) }),
    resize: (size) => ask('POST', '/window/rect', size),
    evaluate: (work, ...args) => {
      const script = `const done = arguments[arguments.length - 1]; Promise.resolve((${work}).apply(null, arguments)).then(done)`;
      return ask('POST', '/execute/async', { script, args });
    },
    click: async (css) => ask('POST', `/element/${await find(css)}/click`, {}),
    type: (text) => pressAll([...text]),
    press: (key) => pressAll([codes[key]]),
    pick: async (css, path) => ask('POST', `/element/${await find(css)}/value`, { text: path }),
    saved: (act) => newFile(downloads, act),
    screenshot: async (path) => writeFile(path, Buffer.from(await ask<string>('GET', '/screenshot'), 'base64')),
  };
}

/** Safari's engine in the smallest browser around it, without anybody's settings: its home is a new folder. */
export async function startWebKit(): Promise<Engine> {
  const { driver, browser, screen } = findWebKit();
  const undo: (() => unknown)[] = [];
  const close = async (): Promise<void> => {
    for (const step of undo.splice(0).reverse()) await step();
  };
  const folder = async (): Promise<string> => {
    const path = await mkdtemp(join(tmpdir(), 'bedding-ledger-'));
    undo.push(() => rm(path, { recursive: true, force: true }));
    return path;
  };
  try {
    const [home, pages] = [await folder(), await folder()];
    const XDG_CONFIG_HOME = join(home, '.config');
    await mkdir(join(XDG_CONFIG_HOME, 'gtk-3.0'), { recursive: true });
    await writeFile(join(XDG_CONFIG_HOME, 'gtk-3.0/gtk.css'), noButtons);
    const copies = await watchedCopies(pages);
    undo.push(copies.close);
    const { process: shown, display } = await startScreen(screen);
    undo.push(() => shown.kill());
    const port = await freePort();
    const own = { HOME: home, XDG_CONFIG_HOME, DISPLAY: display, GDK_BACKEND: 'x11', WEBKIT_DISABLE_DMABUF_RENDERER: '1' };
    const driving = spawn(driver, [`--port=${port}`], { env: { ...process.env, ...own }, stdio: 'ignore' });
    undo.push(() => driving.kill());
    const ask = speaker(`http://127.0.0.1:${port}`);
    await vi.waitUntil(() => ask('GET', '/status').catch(() => undefined), { timeout: patience.wait });
    const options = { binary: browser, args: ['--automation'] };
    const { sessionId } = await ask<{ sessionId: string }>('POST', '/session', {
      capabilities: { alwaysMatch: { 'webkitgtk:browserOptions': options } },
    });
    const inSession: Ask = (method, path, body) => ask(method, `/session/${sessionId}${path}`, body);
    undo.push(() => inSession('DELETE', '').catch(() => undefined));
    await inSession('POST', '/timeouts', { script: patience.wait, pageLoad: patience.wait });
    return { tab: drive(inSession, copies.addressOf, home), close };
  } catch (fault) {
    await close();
    throw fault;
  }
}
