import type { SourceId, Status } from '../../../core/bibliography.ts';
import factors from '../../../data/hygiene-factors.json';
import { bandEdges, bandOf, reweightings, SCORE_CAUTION, scoreReweighted } from '../../../domain/hygiene.ts';
import { factorFacts, type ScoreArguments } from '../../../domain/hygiene-factors.ts';
import { longestStudied } from '../../../domain/hygiene-inverse.ts';
import { html, type Part, table } from '../html.ts';
import { cited, functionLink, shown, withSourceLinks } from '../words.ts';
import { finding, type Section, step } from './figures.ts';

type Points = readonly (readonly number[])[];

const pointsShown = (points: Points, unit = ''): string => points.map(([at, f]) => `${shown(at)} → ${shown(f)}${unit}`).join('; ');

/** What f is, for each factor, from the data that the score itself reads. */
function levelShown(factor: (typeof factors)[keyof typeof factors]): string {
  if ('levels' in factor)
    return Object.entries(factor.levels)
      .map(([name, f]) => `${name} ${f}`)
      .join('; ');
  if ('points' in factor) return pointsShown(factor.points);
  return `the mean over the interval, germs filling the bedding at this rate by dry matter: ${pointsShown(factor.growth_per_day, ' per day')}`;
}

const weightsTable = () =>
  table(
    'Factors of the score: all weights and levels are this project’s judgement',
    ['Factor', 'Weight', 'Level f, 0 best and 1 worst', 'Strength of the evidence'],
    Object.entries(factors).map(([name, factor]) => [html`<code>${name}</code>`, factor.weight, levelShown(factor), factor.strength]),
  );

const evidenceTable = () =>
  table(
    'Studies for and against each factor',
    ['Factor', 'Stands', 'What was found', 'Source'],
    Object.entries(factors).flatMap(([name, { evidence }]) =>
      evidence.map(({ stands, says, source, status }): Part[] => [
        html`<code>${name}</code>`,
        stands,
        withSourceLinks(says),
        cited(source as SourceId, status as Status),
      ]),
    ),
  );

const shed = [11, 0.18, 'mattress', 400 / 420] as const;
const beds: readonly (readonly [string, ScoreArguments])[] = [
  ['sand', [0.966, 2, 'sand', ...shed]],
  ['sawdust', [0.9, 2, 'sawdust', ...shed]],
  ['dried fibre', [0.58, 2, 'dried fibre', ...shed]],
  ['fresh fibre', [0.35, 2, 'fresh fibre', ...shed]],
];

const weightsChanged = factorFacts.flatMap(([factor, { weight }]) =>
  reweightings.map((times) => ({ factor, weight, times, scores: beds.map(([, given]) => scoreReweighted(given, factor, times)) })),
);

const keepsOrder = weightsChanged.every(({ scores }) => scores.every((score, k) => k === 0 || score > (scores[k - 1] as number)));

const weightsChangedTable = () =>
  table(
    'The score of four beds, bedded every two days in the same shed, with one weight halved or doubled',
    ['Weight changed', 'To', ...beds.map(([name]) => name)],
    [
      ['none', '', ...beds.map(([, given]) => scoreReweighted(given, undefined, 1).toFixed(0))],
      ...weightsChanged.map(({ factor, weight, times, scores }) => [
        html`<code>${factor}</code>`,
        shown(weight * times),
        ...scores.map((score) => score.toFixed(0)),
      ]),
    ],
  );

const bandsAt = [0, ...bandEdges].map((edge) => `${bandOf(edge)} from ${edge}`).join(', ');

export const scoreSections: readonly Section[] = [
  {
    id: 'score',
    title: 'The hygiene score',
    paragraphs: [
      html`The score says how much a bed favours germs, from 0 (best) to 100. It is a ${SCORE_CAUTION}. It compares beds that are being planned; it foretells no case of mastitis and judges no herd.`,
      [
        html`It is a weighted mean of the factors given: ${step('HYGIENE.RISK', 'score')}. Only dry matter and interval must be given. Bands: ${bandsAt}; judgement.`,
        weightsTable(),
      ],
      [
        html`The weights and levels were not fitted to data: of the studies held one alone has counts and udder health together for fibre, dried and not (${cited('godden-2023')}), and its abstract gives directions, no figures. They are a reading of these studies, those against as well as those for:`,
        evidenceTable(),
      ],
      [
        html`How much hangs on a weight? Halving and doubling each in turn moves the score as below. ${keepsOrder ? 'The order of the four beds never changes; the band can.' : 'In some of them the order of the four beds changes: do not rely on it.'} So use it to compare beds, and take no comfort from being a point under the edge of a band.`,
        weightsChangedTable(),
      ],
      html`What the tests hold it to is order alone: sand and limestone below sawdust, sawdust below fibre (${cited('fairchild-1982')}, ${cited('limestone-free-stall')}), sand below fibre and deep below mattress (${cited('rowbotham-ruegg-2016')}). The last study is of counts, not of mastitis.`,
      html`Days between beddings: ${step('HYGIENE.RISK', 'growth_per_day', 'f_interval')}. Germs were seen to rise in organic bedding over ${longestStudied()} days (${cited('hogan-1999')}); a laboratory study at 15 °C ran for three and saw none in most fibre (${cited('fibre-growth-2024')}). So ${functionLink('HYGIENE.MAXINTERVAL')} never answers more than ${longestStudied()}. Sand was followed for a week (${cited('kristula-sand')}) and is bedded less often still in some herds (${cited('rowbotham-ruegg-2015')}): there and for limestone it stops at ${longestStudied('sand')}, which is judgement. Rules may ask for use within hours of pressing: see ${functionLink('CONDITIONS')}.`,
      html`A score from few factors looks surer than it is. ${functionLink('HYGIENE.SPAN')} takes each factor not given at its best and its worst, and shows how far any one weight, halved or doubled, would move it; sheets and panel never show a score without that span.`,
      html`Where a laboratory has counted, ${functionLink('HYGIENE.COUNT')} sets the count against ${cited('patel-2019')}: see <a href="hygiene.html#benchmarks">the benchmarks</a>, some of them from memory. ${cited('cornell-solids')} found that counts before use did little to counts in used beds, on six farms; ${cited('pena-mosca-2024')} found that low ones went with low ones, on 29. Counts per gram are not counts per cm³.`,
      html`From beds to cases there is no function here, on purpose. ${cited('hogan-1989')} found clinical mastitis to rise with counts; ${cited('rowbotham-ruegg-2016-heifers')} is said to have found no difference in it between beds, of first-lactation cows only and with figures not seen here; ${cited('bradley-2018')} found none in the counts in milk; ${cited('quebec-fibre')} found none in cases as a whole, but Klebsiella the more frequent cause on fibre. ${cited('godden-2023')} found better udder health in herds on hot-air-dried or composted fibre than on fresh; that the farms differed in nothing else, no such study can show. So the money asks it the other way round: how many extra cases would eat the saving, ${step('UDDER.BREAKEVEN', 'cases_year', 'cases_per_100')}. Whether that many are likely is for the vet.`,
      html`Lying time: ${finding('Lying: sawdust of 34.7 % DM, ± 0.4, non-lactating')} rising to ${finding('Lying: sawdust of 89.8 % DM, ± 0.4, non-lactating')} in one trial; ${finding('Lying: lost on sawdust of 26.5 % against 86.4 % DM, mattresses, non-lactating')} lost on the wet bed in another. The second slope is four times the first; both are shown, never their mean, and neither beyond its own range. No milk is claimed: ${finding('Milk gained by lying longer')}.`,
      html`<b>Against.</b> A vet may hold that hygiene in the parlour, milking and the cows’ own defence outweigh bedding, and that a bedding score draws the eye from them. The score leaves them out; it says nothing of them.`,
      html`<b>Against.</b> Fibre is scored worse than sawdust by counts and by Klebsiella’s greater share of cases. Studies of the cows disagree. For: Klebsiella was the more frequent cause on fibre than on straw, ${finding('Disagreement: Klebsiella as a cause of mastitis on fibre against straw, 2.0 to 24.6')}; herds on inorganic beds had the fewest cells and more milk, ${finding('Milk: herds on inorganic beds over manure products, an association')} over manure products (${cited('rowbotham-ruegg-2015')}), an association from which nothing is priced here. Against: cell scores of 11,031 cows on fibre and straw showed no difference, ${finding('Cells: high scores on fibre against straw, 0.68 to 1.28: no difference shown')} as many high ones (${cited('frechette-2022-scc')}), and udders were cleaner on fibre (${cited('frechette-2022-hygiene')}). Both sides stand beside the score; neither is averaged away. A difference not shown is not a difference ruled out.`,
      html`Other germs: some Salmonella and Johne’s bacterium were found in fibre after a single step, none after digestion with a second step, on 27 farms (${cited('pena-mosca-2025')}). That is ‘not found’, never ‘safe’: ask your vet what your herd’s status means.`,
      html`Money counts clinical cases only. On 145 farms subclinical mastitis was ${finding('Mastitis cost: subclinical part, 145 Canadian farms')} of the cost and clinical ${finding('Mastitis cost: clinical part')} (${cited('aghamohammadi-2018')}): as large again, and more. Whether the rate changed after all is asked of the records: ${functionLink('UDDER.COMPARE')} says how large a rise they could still hide, ${functionLink('UDDER.RECORDMONTHS')} how long it takes to see one.`,
      html`<b>Against.</b> Drying is credited for dryness alone, not for killing germs: a drum near 70 °C may do so for part of the fibre, but how warm fibre gets and for how long is not known here, and ${cited('fibre-growth-2024')} found Klebsiella to grow within a day in fibre from a rotary drum.`,
    ],
  },
];
