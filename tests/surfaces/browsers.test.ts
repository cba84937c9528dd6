import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Engine, engines, featuresInUse } from './features-in-use.ts';

/** What the README's table of browsers promises. */
const readme = readFileSync('README.md', 'utf8');
const promised = (name: string): number => Number(new RegExp(`^\\| ${name}[^|]*\\| ([\\d.]+) \\|`, 'm').exec(readme)?.[1]);
const lowest: Readonly<Record<Engine, number>> = { chrome: promised('Chrome'), firefox: promised('Firefox'), safari: promised('Safari') };

/** Features newer than the promise that the page does without where they are missing, and how that is known. */
const without: Readonly<Record<string, string>> = {
  'Error.captureStackTrace': 'asked for before it is used',
  '.createPolicy': 'asked for before it is used (trustedTypes)',
  '.emptyScript': 'asked for before it is used (trustedTypes)',
  '.toBase64': 'only copies a chart as a picture; the README says so',
  '.destroy': 'of a chart, no browser’s',
  '.element': 'of the schema and template libraries, no browser’s',
  '.entry': 'of what a spreadsheet file holds, no browser’s',
  '.font': 'of a chart and of a cell in Excel, no browser’s',
  '.features': 'of a map in a chart, no browser’s',
  '.layout': 'of a chart, no browser’s',
  'name="viewport"': 'for telephones, which have long had it',
  'user-select': 'only lets no text be marked by a drag',
  'overscroll-behavior': 'only stops the page from moving with a list',
  'backdrop-filter': 'only blurs what lies behind',
  'scrollbar-width': 'only hides a bar',
  'scrollbar-width: none': 'only hides a bar',
};

const features = featuresInUse('dist');
const newer = [...features].filter(([, since]) => engines.some((engine) => (since[engine] ?? 0) > lowest[engine]));

describe('the lowest versions of browsers that the README names', () => {
  it('are known by a look at a good many features', () => {
    for (const known of [
      'light-dark()',
      'nested rules',
      'contenteditable="plaintext-only"',
      'Object.groupBy',
      '@layer',
      '<dialog>',
      'lookbehind',
    ])
      expect([...features.keys()]).toContain(known);
  });

  it('have all that the built page uses', () => {
    expect(newer.map(([name]) => name).filter((name) => !(name in without))).toEqual([]);
  });

  it('are no higher than that asks for', () => {
    const used = [...features].filter(([name]) => !(name in without)).map(([, since]) => since);
    for (const engine of engines) expect(Math.max(...used.map((since) => since[engine] ?? 0)), engine).toBe(lowest[engine]);
  });

  it('need no exception that is not used', () => {
    expect(Object.keys(without).filter((name) => !newer.some(([found]) => found === name))).toEqual([]);
  });
});
