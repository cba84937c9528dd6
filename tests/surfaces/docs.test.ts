import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { Window } from 'happy-dom';
import { describe, expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { bibliography, referenceOf } from '../../src/core/bibliography.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { functionsFile } from '../../src/core/metadata.ts';
import { equations } from '../../src/functions/equations.ts';
import { registry } from '../../src/functions/index.ts';
import { familyOf } from '../../src/generate/docs/families.ts';
import { functionSection } from '../../src/generate/docs/function-section.ts';
import { wholePage } from '../../src/generate/docs/page.ts';
import { anchorOf, pageOf, shown, statuses } from '../../src/generate/docs/words.ts';
import { docsPages } from '../../src/generate/docs.ts';

const style = readFileSync('src/generate/docs/docs.css', 'utf8');

function parsed(markup: string) {
  const { document } = new Window();
  document.write(markup);
  return document;
}

const made = docsPages().map((page) => ({ ...page, whole: wholePage(page, style) }));
const pages = new Map(made.map(({ file, whole }) => [file, parsed(whole)]));
const pageNamed = (file: string) => pages.get(file) ?? expect.fail(`there is no page ${file}`);
const sectionOf = (name: string) =>
  pageNamed(pageOf(familyOf(name))).getElementById(anchorOf(name)) ?? expect.fail(`${name} has no section`);
const cellsOf = (row: { readonly children: Iterable<{ readonly textContent: string }> }) =>
  [...row.children].map((cell) => cell.textContent);
const cases = registry.map((record) => [record.name, record] as const);

describe('the reference', () => {
  it.each(cases)('of %s has every argument in order, with its unit, what to enter and what happens without it', (name, { parameters }) => {
    const rows = [...sectionOf(name).querySelectorAll('table')].find((table) =>
      table.querySelector('caption')?.textContent.startsWith('Arguments'),
    );
    expect([...(rows?.querySelectorAll('tbody tr') ?? [])].map((row) => cellsOf(row)[0])).toEqual(
      parameters.map((parameter) => parameter.name),
    );
    for (const [k, { unit, accepts, says, fallback }] of parameters.entries()) {
      const [, what, inUnit, enter, leftOut] = cellsOf(rows?.querySelectorAll('tbody tr')[k] as never);
      expect(what).toContain(says);
      expect(['', unit]).toContain(inUnit);
      expect(enter).toBe(accepts);
      if (!fallback) expect(leftOut).toBe('required');
      else if (fallback.value === undefined) expect(leftOut).toBe(fallback.shown);
      else expect(leftOut).toContain(`${shown(fallback.value)}`);
      if (fallback?.value !== undefined) expect(leftOut).toContain(`[${statuses[fallback.status].words}]`);
    }
  });

  it.each(cases)('of %s shows its working with sources, its examples with outside answers, and its sources in words', (name, record) => {
    const text = sectionOf(name).textContent;
    const links = [...sectionOf(name).querySelectorAll('a')].map((link) => link.getAttribute('href'));
    for (const { says, source } of Object.values(record.working)) {
      expect(text).toContain(says);
      if (source) expect(links, says).toContain(`sources.html#${source}`);
    }
    for (const { source, gives } of record.examples) {
      expect(text).toContain(source);
      expect(text).toContain(shown(gives));
    }
    for (const id of record.sources) expect(text).toContain(referenceOf(id).reference);
    expect(text).toContain(`=BEDDING.${name}(`);
  });

  it('writes equations as they are read: signs of arithmetic, choices in words, sides of a balance', () => {
    const equationOf = (name: string, step: string) =>
      pageNamed(pageOf(familyOf(name)))
        .getElementById(`${anchorOf(name)}.${step}`)
        ?.closest('tr')?.children[1]?.textContent;
    expect(equationOf('DRYING.WATER', 'water')).toBe('water = dried × (dm_out / dm_in − 1)');
    expect(equationOf('DRYING.HEAT', 'measured_c')).toBe('measured_c = supply_c if air_at = "supply", otherwise ambient_c');
    expect(equationOf('DRYING.HEATEDTEMP', 'supply_c')).toBe('supply_c = ambient_c + heat_kw × 3600 / air_kj_h_k');
    expect(equationOf('INVEST.IRR', 'irr')).toMatch(/^irr is found so that saving_year × .* = capital$/);
  });

  it('speaks of just the functions and arguments that the hosts are told of', () => {
    const told = functionsFile(registry).functions.map(({ name, parameters }) => [name, ...parameters.map((parameter) => parameter.name)]);
    const written = [...pages.values()].flatMap((page) =>
      [...page.querySelectorAll('section:has(> .call)')].map((section) => [
        section.querySelector('h2')?.textContent,
        ...[...section.querySelectorAll('table')]
          .filter((table) => table.querySelector('caption')?.textContent.startsWith('Arguments'))
          .flatMap((table) => [...table.querySelectorAll('tbody th')].map((cell) => cell.textContent)),
      ]),
    );
    expect(written.sort()).toEqual(told.sort());
  });

  it('follows its record: another argument, default or summary is another page, and a wrong answer stops the build', () => {
    const water = registry.find(({ name }) => name === 'DRYING.WATER') as FunctionRecord;
    const [dried, ...rest] = water.parameters;
    const other = { ...water, summary: 'Something else.', parameters: [{ ...dried, name: 'dry_mass' }, ...rest] } as FunctionRecord;
    const { markup } = functionSection(other);
    expect(markup).toContain('Something else.');
    expect(markup).toContain('<code>dry_mass</code>');
    expect(markup).not.toContain('<th scope="row"><code>dried</code>');
    const wrong = { ...water, examples: [{ call: [100, 0.3, 0.9], gives: 201, source: 'nowhere' }] };
    expect(() => functionSection(wrong)).toThrow('DRYING.WATER: its example gives 200, not 201');
  });

  it('lists every item of the budget with its default and how far to trust it', () => {
    const text = pageNamed('budget.html').getElementById('items')?.textContent ?? '';
    for (const { name, parameter } of budgetItems) {
      expect(text).toContain(name);
      if (parameter.fallback?.value !== undefined) expect(text).toContain(statuses[parameter.fallback.status].words);
    }
  });

  it('of the family DEMAND reads as agreed', async () => {
    const page = made.find(({ file }) => file === 'demand.html');
    await expect(`<h1>${page?.title}</h1>\n${page?.body.markup}`).toMatchFileSnapshot('demand-page.html');
  });
});

describe('every page', () => {
  it.each([...pages])('%s has links that lead somewhere, and anchors that are unlike', (file, page) => {
    for (const link of page.querySelectorAll('a')) {
      const [to, anchor] = (link.getAttribute('href') ?? '').split('#');
      const target = pageNamed(to || file);
      if (anchor) expect(target.getElementById(anchor), `${file} → ${to}#${anchor}`).not.toBeNull();
    }
    const ids = [...page.querySelectorAll('[id]')].map(({ id }) => id);
    expect(ids.length - new Set(ids).size).toBe(0);
  });

  it.each(made)('$file stands alone: its own style, no script, nothing fetched', ({ whole }) => {
    expect(whole).not.toMatch(/<script|<img|<link|<iframe|\ssrc=|\sstyle=|url\(|@import|https?:/);
    expect(whole).toContain(`style-src 'sha256-${createHash('sha256').update(style).digest('base64')}'`);
    expect(whole).toContain("default-src 'none'");
  });

  const withIds = 'reference.html'; // SOURCES lists the ids themselves.
  it.each([...pages].filter(([file]) => file !== withIds))('%s names sources in words', (_, page) => {
    const ids = bibliography
      .map(({ id, name }) => ({ id, name }))
      .filter(({ id, name }) => id.includes('-') && id.replace('-', ' ') !== name && id !== name);
    const text = page.body.textContent;
    expect(ids.filter(({ id }) => text.includes(id)).map(({ id }) => id)).toEqual([]);
  });

  it.each(made)('$file has no gap where a figure should be', ({ whole }) => {
    expect(whole).not.toMatch(/undefined|NaN|\[object|Infinity|\$\{|\{\{/);
  });
});

describe('the method note', () => {
  const note = pageNamed('method.html');

  it('numbers its paragraphs, so that each can be objected to', () => {
    const numbers = [...note.querySelectorAll('.number')].map(({ textContent }) => textContent.split('.').map(Number));
    expect(numbers.length).toBeGreaterThan(50);
    for (const [k, [section, paragraph]] of numbers.entries()) {
      const [before = 0, last = 0] = numbers[k - 1] ?? [];
      expect([`${before}.${last + 1}`, `${before + 1}.1`]).toContain(`${section}.${paragraph}`);
    }
  });

  it('says what speaks against each part, and that the score is no diagnosis', () => {
    for (const id of ['mass', 'air', 'claim', 'score', 'money', 'invest']) {
      expect(note.getElementById(id)?.textContent, id).toContain('Against.');
    }
    expect(note.getElementById('score')?.textContent).toContain('planning aid, no diagnosis');
  });

  it('lists every default that rests on memory', () => {
    const text = note.getElementById('unknown')?.textContent ?? '';
    const all = [...registry.flatMap(({ parameters }) => parameters), ...budgetItems.map(({ parameter }) => parameter)];
    for (const { name, fallback } of all) if (fallback?.value !== undefined && fallback.status === 'memory') expect(text).toContain(name);
  });

  it('explains every name that an equation uses', () => {
    const known = ['exp', 'log', 'max', 'min', 'sqrt'];
    const used = registry.flatMap(({ working }) =>
      Object.values(working).flatMap((line) =>
        'told' in line ? [] : [...('how' in line ? line.how : line.solves).matchAll(/([A-Za-z]\w*)\(/g)],
      ),
    );
    const names = new Set(used.map(([, name]) => name as string).filter((name) => !known.includes(name)));
    expect([...names].filter((name) => !(name in equations))).toEqual([]);
  });
});
