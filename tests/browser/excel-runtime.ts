import { readFile } from 'node:fs/promises';
import type { Browser } from 'playwright-core';

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
const files = new Map([
  ['/custom-functions-runtime.js', root('node_modules/@microsoft/office-js/dist/custom-functions-runtime.js')],
  ['/functions.js', root('dist/functions.js')],
]);

/** The bridge must be there before the runtime is: it looks for it once, while it loads. */
const page = `<!doctype html><title>Functions</title>
<script>
  window.replies = [];
  window._richApiNativeBridge = {
    sendMessageToHost(text) {
      const { id, message } = JSON.parse(text);
      for (const { Name, ArgumentInfo } of message.body.Actions) {
        if (Name === 'SetInvocationArrayResults') window.replies.push(...ArgumentInfo.Arguments[0]);
      }
      const answer = { statusCode: 200, headers: {}, body: '{"Results":[]}' };
      queueMicrotask(() => this.onMessageFromHost(JSON.stringify({ id, type: 2, message: answer })));
    },
  };
</script>
<script src="custom-functions-runtime.js"></script>
<script src="functions.js"></script>`;

declare global {
  interface Window {
    replies: [id: number, worked: boolean, value: unknown, codeOrTime: unknown][];
    _richApiNativeBridge: { onMessageFromHost(text: string): void };
  }
}

/**
 * dist/functions.js under Microsoft's own custom-functions runtime, with us in Excel's place at the other end of its
 * bridge. The bridge is undocumented: tests only, with the version of @microsoft/office-js pinned in package.json.
 */
export async function openRuntime(browser: Browser) {
  const tab = await browser.newPage();
  const requests: string[] = [];
  const faults: string[] = [];
  tab.on('pageerror', ({ message }) => faults.push(message));
  await tab.route('**/*', async (route) => {
    const { pathname } = new URL(route.request().url());
    requests.push(pathname);
    const file = files.get(pathname);
    if (pathname === '/') return route.fulfill({ contentType: 'text/html', body: page });
    return file ? route.fulfill({ contentType: 'text/javascript', body: await readFile(file, 'utf8') }) : route.abort();
  });
  await tab.goto('https://excel.example/');

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
    await tab.waitForFunction((count) => window.replies.length >= count, calls.length, { timeout: 60_000, polling: 20 });
    const replies = await tab.evaluate(() => window.replies);
    return replies
      .sort(([a], [b]) => a - b)
      .map(([, worked, value, code]) => (worked ? { failed: false, value } : { failed: true, code: Number(code), message: String(value) }));
  }

  return { tab, requests, faults, registered, callAll };
}
