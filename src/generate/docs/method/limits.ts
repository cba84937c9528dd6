import { budgetItems } from '../../../budget/items.ts';
import { bibliography } from '../../../core/bibliography.ts';
import benchmarks from '../../../data/hygiene-benchmarks.json';
import materials from '../../../data/materials.json';
import findings from '../../../data/welfare-findings.json';
import { equations } from '../../../functions/equations.ts';
import { registry } from '../../../functions/index.ts';
import { type Html, html, joined, table } from '../html.ts';
import { cited, equation, functionLink, readable, shown } from '../words.ts';
import { accepts, type Section, taken } from './figures.ts';

const limitsTable = () =>
  table(
    'What is refused outside these, and why',
    ['Function', 'Holds for', 'Why'],
    (
      [
        ['DRYING.EVAPORATION', `supply_c: ${accepts('DRYING.EVAPORATION', 'supply_c')}`, 'saturation pressure is held from −100 to 200 °C'],
        ['DRYING.OUTPUT', 'dm_out up to 0.80', 'no sorption data for manure fibre'],
        ['DRYING.HOTWATER', `flow_c: ${accepts('DRYING.HOTWATER', 'flow_c')}`, 'density of water by Kell'],
        [
          'PLANT.SETTLING',
          `diameter_mm: ${accepts('PLANT.SETTLING', 'diameter_mm')}`,
          'a round particle; fibres fall slower, so the answer is an upper bound',
        ],
        ['WELFARE.LYINGAMOUNT', `kg_sawdust: ${accepts('WELFARE.LYINGAMOUNT', 'kg_sawdust')}`, 'the two ends of one trial'],
        ['WELFARE.LYING', 'each trial within its own range only', 'no trial is carried beyond its beds'],
        ['HYGIENE.RISK', `interval_days: ${accepts('HYGIENE.RISK', 'interval_days')}`, 'beyond what was studied it is judgement'],
      ] as const
    ).map(([name, holds, why]) => [functionLink(name), holds, why]),
  );

interface Remembered {
  readonly what: string;
  readonly figure: string;
  readonly by: Html;
}

const materialWords: Readonly<Record<string, string>> = {
  density_kg_m3: 'density, kg/m³',
  dm: 'dry matter',
  kg_cow_day: 'use, kg per cow per day',
};

const isMemory = ({ status }: { readonly status?: string }): boolean => status === 'memory';

/** Everything that rests on memory alone: defaults of functions and of the budget, materials, benchmarks and findings. */
function remembered(): readonly Remembered[] {
  const ofFunctions = registry.flatMap(({ name, parameters }) => parameters.map((parameter) => ({ parameter, by: functionLink(name) })));
  const ofItems = budgetItems.map(({ parameter }) => ({ parameter, by: html`<a href="budget.html#items">budget</a>` }));
  const defaults = [...ofFunctions, ...ofItems].flatMap(({ parameter: { name, says, fallback }, by }) =>
    fallback && fallback.value !== undefined && isMemory(fallback) ? [{ what: `${name}: ${says}`, figure: shown(fallback.value), by }] : [],
  );
  const ofMaterials = Object.entries(materials).flatMap(([name, figures]) =>
    Object.entries(figures).flatMap(([what, figure]) =>
      'value' in figure && isMemory(figure)
        ? [
            {
              what: `${name}: ${materialWords[what]}`,
              figure: shown(figure.value),
              by: html`<a href="material.html#figures">materials</a>`,
            },
          ]
        : [],
    ),
  );
  const ofBenchmarks = Object.entries(benchmarks).flatMap(([state, organisms]) =>
    Object.entries(organisms).flatMap(([organism, figure]) =>
      'cfu_per_cm3' in figure && isMemory(figure)
        ? [{ what: `${organism}, ${state} bedding, cfu/cm³`, figure: shown(figure.cfu_per_cm3), by: functionLink('HYGIENE.COUNT') }]
        : [],
    ),
  );
  const ofFindings = findings
    .filter(isMemory)
    .map(({ finding, figure, unit }) => ({ what: `${finding}, ${unit}`, figure: shown(figure), by: functionLink('WELFARE.TABLE') }));
  return [...defaults, ...ofMaterials, ...ofBenchmarks, ...ofFindings];
}

/** One row for each figure, with all that take it. */
function rememberedTable(): Html {
  const rows = new Map<string, Remembered[]>();
  for (const one of remembered()) {
    const key = `${one.what} ${one.figure}`;
    rows.set(key, [...(rows.get(key) ?? []), one]);
  }
  return table(
    'Figures from memory',
    ['What', 'Figure', 'Taken by'],
    [...rows.values()].map((same) => [
      same[0]?.what,
      same[0]?.figure,
      joined(
        same.map(({ by }) => by),
        ', ',
      ),
    ]),
  );
}

const equationsTable = () =>
  table(
    'Names used in equations',
    ['Name', 'What it is', 'Equation', 'Source'],
    Object.entries(equations).map(([name, line]) => [
      html`<code id="${name}">${name}(${line.of.join(', ')})</code>`,
      `${line.says}${line.unit && line.unit !== 'text' ? `, ${line.unit}` : ''}`,
      'how' in line ? readable(line.how) : equation(name, line),
      line.source ? cited(line.source) : '',
    ]),
  );

const fromMemory = bibliography.filter(({ status }) => status === 'memory').length;

export const limitSections: readonly Section[] = [
  {
    id: 'limits',
    title: 'Where it holds',
    paragraphs: [
      [
        html`An argument outside its bounds is refused in its own cell, with the reason. The bounds that come from science rather than good sense:`,
        limitsTable(),
      ],
      html`Where the question is sound but has no answer (the kit never pays back, the air carries nothing off, no interval meets the target) the cell shows <code>#N/A</code> with a sentence, never a zero.`,
      html`Everything is for cubicles of dairy cows in temperate weather. Loose yards, calf pens, deep composted packs and summer grazing are not in it.`,
    ],
  },
  {
    id: 'unknown',
    title: 'What is not known',
    paragraphs: [
      [
        html`These figures are from memory and were not checked in any source. Measure your own before money hangs on one:`,
        rememberedTable(),
      ],
      html`Of the ${bibliography.length} entries in <a href="sources.html">sources</a>, ${fromMemory} are from memory: the work exists as far as is remembered, but it was not opened for this project.`,
      html`How fibre holds its water when nearly dry; how it shrinks and what it then weighs (${taken('shrinkage')}); how damp a drum’s exhaust gets (${taken('exhaust_rh')}): no measurement on manure fibre is held.`,
      html`How fast germs come back in dried fibre beyond the days that were studied, how much a drum kills, and how many more or fewer cases follow: not known. Anyone who says so owes you the trial.`,
      html`Dust against dry matter: no curve was found. Fibre above some 0.60 dry matter is dusty by common practice (no source); ${cited('basinas-2014')} measured what dairy workers breathe.`,
      html`Digested and composted fibre: no density, dry matter or trial is held. ${functionLink('MATERIAL.DENSITY')} answers <code>#N/A</code> for them and asks for a weighed bucket.`,
      html`The weather is what is typed in: a year’s mean of ${taken('outdoor_temperature')} and a coldest month of ${taken('coldest_temperature')}, both in °C, stand in until you have your own station’s means.`,
    ],
  },
  {
    id: 'permission',
    title: 'Permission and safety',
    paragraphs: [
      html`Whether recycled manure solids may be used at all, from which slurry, heated or not, and whether the milk buyer takes the milk, differs by country and changes. ${functionLink('CONDITIONS')} lists what was found with its date; every line must be rechecked with the authority and the milk buyer. Where nothing was found it says ‘ask’.`,
      html`Slurry gas kills, drums and augers catch, hot water scalds, dry fibre and its dust burn, dust harms lungs. ${functionLink('CAUTIONS')} names the usual cautions and whom to ask. Local codes and licensed people come first; nothing here stands in for them.`,
      html`Nothing here is veterinary, tax, legal or engineering advice. It is a sum with its working shown, so that those who give such advice can see what they are asked to agree to.`,
    ],
  },
  {
    id: 'names',
    title: 'Equations behind the names',
    paragraphs: [[html`Equations in the reference use these names:`, equationsTable()]],
  },
];
