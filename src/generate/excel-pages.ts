import { createHash } from 'node:crypto';

/** The vendor requires that its own scripts come from its own network; nothing else is fetched from anywhere. */
const VENDOR = 'https://appsforoffice.microsoft.com';

/** A script that could not be fetched leaves nothing behind, so that `typeof Office` tells. */
const GIVE_UP = 'this.remove()';
const giveUpHash = createHash('sha256').update(GIVE_UP).digest('base64');

/**
 * Only our own scripts and the vendor's run, and what they load comes from the same two places. Whom the vendor's script speaks
 * to over https is left open, because it reaches Excel in another way on each platform and nothing here could show that a
 * stricter policy works on all of them.
 */
const policy = (scripts = ''): string =>
  [
    `default-src 'self' ${VENDOR}`,
    `script-src 'self' ${VENDOR}${scripts}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data:",
    "connect-src 'self' https:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');

const withPolicy = (policy: string): string => `<meta http-equiv="Content-Security-Policy" content="${policy}">\n`;

const page = (title: string, head: string, body: string): string => `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
${head}</head>
<body>
${body}
</body>
</html>
`;

const ink = 'font: 1rem/1.5 system-ui, sans-serif; color: #1f2a24; background: #fff';
const reading = `body { margin: 1rem; max-width: 45rem; ${ink} } pre { white-space: pre-wrap }`;
const readingPolicy = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(reading).digest('base64')}'; base-uri 'none'; form-action 'none'`;
const paneStyle = `<style>html, body, main, #pane { height: 100%; margin: 0 } body { ${ink} } .told { margin: 1rem }</style>\n`;

/** Where the functions run in Excel on Mac and on the web; Excel on Windows loads functions.js alone. */
export const functionsPage = (): string =>
  page(
    'Bedding Ledger functions',
    `${withPolicy(policy())}<script src="${VENDOR}/lib/1.1/hosted/custom-functions-runtime.js"></script>\n`,
    '<script src="functions.js"></script>',
  );

/** The pane in Excel. Its words stand before the vendor's script, so that they show while that is fetched. */
export const taskpanePage = (): string =>
  page(
    'Bedding Ledger',
    `${withPolicy(policy(` 'unsafe-hashes' 'sha256-${giveUpHash}'`))}${paneStyle}`,
    `<main>
<h1 style="position: absolute; clip-path: inset(50%)">Bedding Ledger</h1>
<div id="pane"><p class="told">Waiting for Excel…</p><noscript><p class="told">This panel needs JavaScript.</p></noscript></div>
</main>
<script src="${VENDOR}/lib/1/hosted/office.js" onerror="${GIVE_UP}"></script>
<script src="taskpane.js"></script>`,
  );

/** What the manifests point to for support, privacy and terms. */
export const aboutPage = (version: string, licence: string): string =>
  page(
    'About Bedding Ledger',
    `${withPolicy(readingPolicy)}<style>${reading}</style>\n`,
    `<h1>Bedding Ledger ${version}</h1>
<p>Spreadsheet functions, a budget workbook and a panel that show with figures whether cubicle bedding made from a herd’s own slurry will work and pay.</p>
<p>It plans; it does not diagnose, and it does not replace the vet, the engineer, the accountant or the authority. The help for each function is in <a href="docs/index.html">the reference</a>.</p>
<h2 id="privacy">Privacy</h2>
<p>Everything is worked out on your own machine. The functions, the workbook and the panel send nothing anywhere and keep no record of use. In Excel, Microsoft’s own office.js is fetched from Microsoft, which its privacy statement covers.</p>
<h2 id="terms">Terms</h2>
<pre>${licence.replace(/&/g, '&amp;').replace(/</g, '&lt;')}</pre>`,
  );
