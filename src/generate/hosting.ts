import { readdir, stat } from 'node:fs/promises';
import { extname, join, relative } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.md': 'text/markdown; charset=utf-8',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};

/** Read by Excel itself from its own address, not by one of our pages. */
const readByExcel = ['functions.js', 'functions.json', 'functions.html'];

/** Excel on the web shows these in a frame, and speaks to them from the page around it. */
const framedByExcel = ['taskpane.html', 'functions.html'];

/** The parts of a page's policy that work only as a header: it stands in no other page's frame, and no page that opens it reaches into it. */
const apart = { 'Content-Security-Policy': "frame-ancestors 'none'", 'Cross-Origin-Opener-Policy': 'same-origin' };

/** The headers a server must send with a file of dist, by its path there. */
export function headersFor(path: string): Readonly<Record<string, string>> {
  const extension = extname(path);
  const icon = extension === '.png';
  return {
    'Content-Type': types[extension] ?? 'application/octet-stream',
    // Excel asks that icons may be kept; the rest changes with a release, and only together.
    'Cache-Control': icon ? 'public, max-age=86400' : 'public, max-age=300, must-revalidate',
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    ...(extension === '.html' && !framedByExcel.includes(path) && apart),
    ...(readByExcel.includes(path) && { 'Access-Control-Allow-Origin': '*' }),
  };
}

/** Said once above the table. */
const forAll = ['X-Content-Type-Options', 'Referrer-Policy'];

async function filesIn(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

/** What to upload and how to serve it, as a table for whoever keeps the server. */
export async function hostingTable(folder: string, url: string): Promise<string> {
  const rows = await Promise.all(
    (await filesIn(folder)).map(async (path) => {
      const { 'Content-Type': type, 'Cache-Control': cache, ...others } = headersFor(path);
      const { size } = await stat(join(folder, path));
      const further = Object.entries(others).flatMap(([name, value]) => (forAll.includes(name) ? [] : [`${name}: ${value}`]));
      return `| ${path} | ${Math.ceil(size / 1000)} | ${type} | ${cache} | ${further.join('; ')} |`;
    }),
  );
  return `# Hosting Bedding Ledger at ${url}

Upload every file of this folder, as it is, to that address. Any static host over https will do. Send with each file the headers below, and with all of them \`X-Content-Type-Options: nosniff\` and \`Referrer-Policy: no-referrer\`.

Excel on the web shows taskpane.html and functions.html in a frame: send neither \`X-Frame-Options\` nor \`frame-ancestors\` with them. No other page belongs in a frame: \`frame-ancestors 'none'\` and \`Cross-Origin-Opener-Policy\` keep other sites from laying one over their own and from reaching into it, and no page can ask for that itself. Users then add manifest.xml to Excel (README.md); they need nothing else. The pages sheet.html and bedding-ledger.html work without Excel.

| file | kB | Content-Type | Cache-Control | further headers |
|---|---|---|---|---|
${rows.join('\n')}
`;
}
