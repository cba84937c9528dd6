import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Browser } from 'playwright-core';
import { headersFor } from '../../src/generate/hosting.ts';

/** What Microsoft's runtime hands back for one call, as Excel would get it. */
export type Reply =
  | { readonly failed: false; readonly value: unknown }
  | { readonly failed: true; readonly code: number; readonly message: string };

export interface Call {
  readonly name: string;
  /** As Excel passes them: matrices, null for an argument left out, `{ type, code }` for a cell with an error. */
  readonly args: readonly unknown[];
}

/** An error in a cell as Excel sends it over the bridge. */
export const errorCell = (code: string) => ({ type: 'CustomFunctionError', code });

const root = (file: string) => new URL(`../../${file}`, import.meta.url);
const OURS = 'https://excel.example/';
const VENDOR = 'https://appsforoffice.microsoft.com/lib/1.1/hosted/';
const files = new Map([
  [`${VENDOR}custom-functions-runtime.js`, root('node_modules/@microsoft/office-js/dist/custom-functions-runtime.js')],
  [`${OURS}functions.js`, root('dist/functions.js')],
  [`${OURS}functions.html`, root('dist/functions.html')],
]);

/** Runs in the page before all else: the runtime looks for its bridge once, while it loads. */
function bridge(): void {
  window.replies = [];
  window._richApiNativeBridge = {
    onMessageFromHost: () => undefined,
    sendMessageToHost(text) {
      const { id, message } = JSON.parse(text);
      for (const { Name, ArgumentInfo } of message.body.Actions) {
        if (Name === 'SetInvocationArrayResults') window.replies.push(...ArgumentInfo.Arguments[0]);
      }
      const answer = { statusCode: 200, headers: {}, body: '{"Results":[]}' };
      queueMicrotask(() => this.onMessageFromHost(JSON.stringify({ id, type: 2, message: answer })));
    },
  };
}

declare global {
  interface Window {
    replies: [id: number, worked: boolean, value: unknown, codeOrTime: unknown][];
    _richApiNativeBridge: { onMessageFromHost(text: string): void; sendMessageToHost(text: string): void };
  }
}

/**
 * dist/functions.html and functions.js under Microsoft's own custom-functions runtime, with us in Excel's place at the other end of its
 * bridge. The bridge is undocumented: tests only, with the version of @microsoft/office-js pinned in package.json.
 */
export async function openRuntime(browser: Browser) {
  const tab = await browser.newPage();
  const requests: string[] = [];
  const faults: string[] = [];
  tab.on('pageerror', ({ message }) => faults.push(message));
  await tab.addInitScript(bridge);
  await tab.route('**/*', async (route) => {
    const url = route.request().url();
    requests.push(url);
    const file = files.get(url);
    if (!file) return route.abort();
    return route.fulfill({ headers: headersFor(basename(url)), body: await readFile(file) });
  });
  await tab.goto(`${OURS}functions.html`);

  const registered = () =>
    tab.evaluate(() => Object.keys((CustomFunctions as unknown as { _association: { mappings: object } })._association.mappings));

  /** Sends all calls in one message, as Excel does on a recalculation, and waits for an answer to each. */
  async function callAll(calls: readonly Call[]): Promise<Reply[]> {
    const ERRORS_ALLOWED = 4;
    const entries = calls.map(({ name, args }, id) => ({
      messageCategory: 1,
      messageType: 1000,
      message: JSON.stringify([id, name, args, 'Sheet1!A1', ERRORS_ALLOWED]),
    }));
    await tab.evaluate(
      (text) => {
        window.replies = [];
        window._richApiNativeBridge.onMessageFromHost(text);
      },
      JSON.stringify({ type: 3, message: { entries } }),
    );
    await tab.waitForFunction((count) => window.replies.length >= count, calls.length, { polling: 20 });
    const replies = await tab.evaluate(() => window.replies);
    return replies
      .sort(([a], [b]) => a - b)
      .map(([, worked, value, code]) => (worked ? { failed: false, value } : { failed: true, code: Number(code), message: String(value) }));
  }

  return { tab, requests, faults, registered, callAll };
}
