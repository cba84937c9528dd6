import { define, defineSpill, type Line } from '../core/define.ts';
import { choice, maybe, number } from '../core/parameters.ts';
import { beddingStates, countAgainstBenchmark, countPerVolume, organisms } from '../domain/bedding-counts.ts';
import { hygieneScore, SCORE_CAUTION, scoreBand, scoreDrivers, scoreSpan } from '../domain/hygiene.ts';
import { beds, type Factor, factorFacts } from '../domain/hygiene-factors.ts';
import { longestInterval, lowestDryMatter } from '../domain/hygiene-inverse.ts';
import { bulkDensity, dryMatter, material } from './shared.ts';

const dm = dryMatter('dm', 'dry matter of the bedding as it is laid');
const intervalDays = number('interval_days', 'days', 'days between beddings', { min: 0.25, max: 14 });
const targetScore = number('target_score', '0–100', 'score that must not be passed');

const leftOut = 'left out of the score';
const rest = [
  maybe(material('material', 'what the cows lie on'), leftOut),
  maybe(number('shed_c', '°C', 'air in the shed where the cows lie', { min: -20, max: 45 }), leftOut),
  maybe(number('dirty_udders', 'fraction', 'share of cows whose udders score 3 or 4: UDDER.DIRTY'), leftOut),
  maybe(choice('bed', 'deep bed or mattress under the bedding', beds), leftOut),
  maybe(number('stocking', 'cows per cubicle', 'cows per cubicle', { above: 0, max: 3 }), leftOut),
] as const;

const steps: Record<Factor, string> = {
  dm: 'f_dm',
  interval_days: 'f_interval',
  material: 'f_material',
  shed_c: 'f_shed',
  dirty_udders: 'f_udders',
  bed: 'f_bed',
  stocking: 'f_stocking',
};
const sumOf = (each: string): string => factorFacts.map(([factor, { weight }]) => `${each}(${weight}, ${steps[factor]})`).join(' + ');

const sums = {
  weights: { says: 'Weights of the factors given', unit: '', how: sumOf('weightIfGiven') },
  weighted: { says: 'Weights times levels', unit: '', how: sumOf('weightedIfGiven') },
  score: { says: `Score, 0 is best: a ${SCORE_CAUTION}`, unit: '0–100', how: '100 * weighted / weights' },
} as const satisfies Record<string, Line>;

/** A step of the score worked out again, as it stands or at other days or dryness. */
const ofScore = (step: 'score' | 'weights' | 'weighted', { days = 'interval_days', dryness = 'dm' } = {}) =>
  `hygieneScore(${dryness}, ${days}, material, shed_c, dirty_udders, bed, stocking).${step}`;

/** What the factors not given would add, each at one end of its reach; the first two are always given. */
const ofRest = (end: 'best' | 'worst') =>
  factorFacts
    .slice(2)
    .map(([factor, facts]) => `(${factor} == undefined ? ${facts.weight * facts[end]} : 0)`)
    .join(' + ');

const evidence = [
  'project',
  'pena-mosca-2024',
  'godden-2023',
  'fibre-trade-press',
  'dunlop-2016',
  'cornell-solids',
  'iowa-r2322',
  'hogan-1999',
  'kristula-sand',
  'rowbotham-ruegg-2015',
  'rowbotham-ruegg-2016',
  'rowbotham-ruegg-2016-heifers',
  'frechette-2022-scc',
  'frechette-2022-hygiene',
  'pena-mosca-2025',
  'fairchild-1982',
  'limestone-free-stall',
  'rendos-1975',
  'hogan-1989',
  'quebec-fibre',
  'frechette-2021',
  'bradley-2018',
  'ross-2003',
  'fibre-growth-2024',
  'schreiner-ruegg-2003',
  'fregonesi-2007-stocking',
  'stocking-2016',
] as const;

export const hygiene = [
  define({
    name: 'HYGIENE.RISK',
    summary: `How much a bed favours germs, as a score from 0 (best) to 100; read it with HYGIENE.SPAN. A ${SCORE_CAUTION}.`,
    finds: 'hygiene score, mastitis risk, clean beds, udder health, bacteria, germs',
    parameters: [dm, intervalDays, ...rest],
    compute: hygieneScore,
    result: 'score',
    working: {
      f_dm: { says: 'Level of dry matter, 0 best to 1 worst', unit: '', how: 'dryMatterLevel(dm)', source: 'project' },
      growth_per_day: { says: 'How fast germs fill the bedding', unit: 'per day', how: 'growthRate(dm)', source: 'project' },
      f_interval: {
        says: 'Level of the interval: the mean over it',
        unit: '',
        how: '1 - (1 - exp(-growth_per_day * interval_days)) / (growth_per_day * interval_days)',
        source: 'project',
      },
      f_material: { says: 'Level of the material', unit: '', how: 'materialLevel(material)', source: 'project' },
      f_shed: { says: 'Level of the shed’s air', unit: '', how: 'shedLevel(shed_c)', source: 'project' },
      f_udders: { says: 'Level of dirty udders', unit: '', how: 'udderLevel(dirty_udders)', source: 'project' },
      f_bed: { says: 'Level of the bed', unit: '', how: 'bedLevel(bed)', source: 'project' },
      f_stocking: { says: 'Level of stocking', unit: '', how: 'stockingLevel(stocking)', source: 'project' },
      ...sums,
    },
    sources: evidence,
    examples: [
      {
        call: [0.9, 1],
        gives: 20.8830921630084,
        within: 1e-9,
        source: 'by hand: f 0 and 1 − (1 − e^−1.2)/1.2, both of weight 15',
      },
      {
        call: [0.58, 2, 'dried fibre', 11, 0.18, 'mattress', 400 / 420],
        gives: 47.510889504246,
        within: 1e-9,
        source: 'by hand from the table of weights and points: f 0.44, 0.842950, 0.55, 0.064, 0.4, 0.7 and 0 over weights of 85',
      },
    ],
  }),

  defineSpill({
    name: 'HYGIENE.SPAN',
    summary: `The hygiene score with the lowest and highest it could be over what was not given, and with any one weight halved or doubled, each with its band. A ${SCORE_CAUTION}.`,
    finds: 'range, how sure, uncertainty, best and worst case, score span',
    parameters: [dm, intervalDays, ...rest],
    compute: scoreSpan,
    columns: ['key', 'value', 'unit'],
    working: {
      weighted: {
        says: 'Weights times levels of the factors given',
        unit: '',
        how: ofScore('weighted'),
      },
      all_weights: { says: 'Weights of all factors', unit: '', how: factorFacts.map(([, { weight }]) => weight).join(' + ') },
      best_of_rest: {
        says: 'The factors not given at their best',
        unit: '',
        told: 'weight times smallest level, added up',
        closed: ofRest('best'),
      },
      worst_of_rest: {
        says: 'The factors not given at their worst',
        unit: '',
        told: 'weight times largest level, added up',
        closed: ofRest('worst'),
      },
      lowest: { says: 'Lowest', unit: '0–100', how: 'min(score, 100 * (weighted + best_of_rest) / all_weights)' },
      highest: { says: 'Highest', unit: '0–100', how: 'max(score, 100 * (weighted + worst_of_rest) / all_weights)' },
      weights_lowest: { says: 'Lowest score with any one weight halved or doubled', unit: '0–100', told: 'tried one by one' },
      weights_highest: { says: 'Highest score with any one weight halved or doubled', unit: '0–100', told: 'tried one by one' },
      score: { says: `Score: a ${SCORE_CAUTION}`, unit: '0–100', how: ofScore('score') },
    },
    sources: ['project'],
    examples: [
      {
        call: [0.9, 1],
        at: ['highest', 'value'],
        gives: (100 * (15 * 0.417661843260168 + 20 * 0.85 + 10 + 15 + 5 * 0.7 + 5)) / 85,
        within: 1e-9,
        source: 'by hand: fresh fibre, 30 °C, dirty udders, mattresses and overstocking beside f 0 and 0.417662',
      },
      {
        call: [0.9, 1],
        at: ['weights highest', 'value'],
        gives: (100 * 2 * 0.417661843260168) / 3,
        within: 1e-9,
        source: 'by hand: f 0 and 0.417662, the second counted twice',
      },
    ],
  }),

  define({
    name: 'HYGIENE.BAND',
    summary: `The band of a hygiene score: low, moderate, raised or high. A ${SCORE_CAUTION}.`,
    finds: 'good or bad, traffic light, level of risk, low moderate raised high',
    parameters: [number('score', '0–100', 'hygiene score: HYGIENE.RISK')],
    compute: scoreBand,
    result: 'band',
    working: {
      band: {
        says: 'Band',
        unit: 'text',
        told: 'low below 25, moderate below 50, raised below 75, else high',
        closed: "score < 25 ? 'low' : score < 50 ? 'moderate' : score < 75 ? 'raised' : 'high'",
      },
    },
    sources: ['project'],
    examples: [{ call: [47.5], gives: 'moderate', source: 'by hand: from 25 to below 50' }],
  }),

  defineSpill({
    name: 'HYGIENE.DRIVERS',
    summary: `What makes up a hygiene score, factor by factor, with the studies for and against. A ${SCORE_CAUTION}.`,
    finds: 'why is the score high, what to improve, evidence, studies, factors',
    parameters: [dm, intervalDays, ...rest],
    compute: scoreDrivers,
    columns: ['factor', 'value', 'points', 'share', 'evidence', 'strength', 'could bring'],
    working: {
      weights: {
        says: 'Weights of the factors given',
        unit: '',
        how: ofScore('weights'),
      },
      weighted: {
        says: 'Weights times levels',
        unit: '',
        how: ofScore('weighted'),
      },
      score: sums.score,
    },
    sources: evidence,
    examples: [
      {
        call: [0.58, 2, 'dried fibre', 11, 0.18, 'mattress', 400 / 420],
        at: ['material', 'points'],
        gives: (100 * 20 * 0.55) / 85,
        within: 1e-9,
        source: 'by hand: weight 20 at level 0.55, of weights of 85',
      },
    ],
  }),

  define({
    name: 'HYGIENE.MAXINTERVAL',
    summary: `Longest time between beddings that keeps the hygiene score at or below a target. A ${SCORE_CAUTION}.`,
    finds: 'how often to bed, days between beddings, interval, fresh bedding',
    parameters: [dm, targetScore, ...rest],
    compute: longestInterval,
    result: 'interval_days',
    working: {
      limit_days: { says: 'Longest that growth studies reach', unit: 'days', how: 'longestStudied(material)' },
      score_at_limit: { says: 'Score at that', unit: '0–100', how: ofScore('score', { days: 'limit_days' }) },
      best_score: { says: 'Score when bedded every quarter of a day', unit: '0–100', how: ofScore('score', { days: '0.25' }) },
      interval_days: {
        says: 'Longest interval',
        unit: 'days',
        solves: `${ofScore('score')} == min(target_score, score_at_limit)`,
        between: ['0.25', 'limit_days'],
      },
      score: { says: `Score at that interval: a ${SCORE_CAUTION}`, unit: '0–100', how: ofScore('score') },
    },
    sources: ['project', 'kristula-sand', 'hogan-1999'],
    examples: [
      {
        call: [0.9, 20.8830921630084],
        gives: 1,
        within: 1e-9,
        source: 'by hand: at one day f is 1 − (1 − e^−1.2)/1.2, and dry matter adds nothing',
      },
      { call: [0.9, 60], gives: 2, source: 'by hand: no score from these two factors passes 50, so only the studies set a limit' },
    ],
  }),

  define({
    name: 'HYGIENE.MINDM',
    summary: `Lowest dry matter that keeps the hygiene score at or below a target; whether fibre can be made so dry is in its working. A ${SCORE_CAUTION}.`,
    finds: 'how dry, how far to dry, target dry matter, dryness needed',
    parameters: [intervalDays, targetScore, ...rest],
    compute: lowestDryMatter,
    result: 'dm',
    working: {
      score_at_wettest: { says: 'Score at 0.15 dry matter', unit: '0–100', how: ofScore('score', { dryness: '0.15' }) },
      best_score: { says: 'Score at 0.95 dry matter', unit: '0–100', how: ofScore('score', { dryness: '0.95' }) },
      dm: {
        says: 'Lowest dry matter',
        unit: 'fraction',
        solves: `${ofScore('score')} == min(target_score, score_at_wettest)`,
        between: ['0.15', '0.95'],
      },
      score: { says: `Score at that dry matter: a ${SCORE_CAUTION}`, unit: '0–100', how: ofScore('score') },
      reach: { says: 'Can fibre be made so dry?', unit: 'text', how: 'fibreReach(dm, material)', source: 'fibre-trade-press' },
    },
    sources: ['project', 'fibre-trade-press'],
    examples: [
      {
        call: [2, 50 * (0.7 + 0.874472908031159)],
        gives: 0.45,
        within: 1e-9,
        source: 'by hand: at 0.45 dry matter the level is 0.7, and that of two days 0.874474, both of weight 15',
      },
    ],
  }),

  define({
    name: 'HYGIENE.COUNT',
    summary: 'A laboratory’s count of germs in bedding against the published benchmark. It sorts beds and diagnoses nothing: ask your vet.',
    finds: 'lab result, bacteria count, cfu, coliforms, klebsiella, bedding culture, benchmark',
    parameters: [
      choice('organism', 'group of germs counted', organisms),
      choice('state', 'whether cows have lain on it', beddingStates),
      number('cfu_per_cm3', 'cfu/cm³', 'count per cm³ of bedding; from a count per gram: HYGIENE.PERVOLUME'),
    ],
    compute: countAgainstBenchmark,
    result: 'against',
    working: {
      benchmark: { says: 'Benchmark', unit: 'cfu/cm³', told: 'looked up by organism and state', source: 'patel-2019' },
      against: {
        says: 'Count against the benchmark; where that is 0, absent or present',
        unit: 'times',
        how: 'benchmark > 0 ? cfu_per_cm3 / benchmark : cfu_per_cm3 > 0 ? "present" : "absent"',
      },
    },
    sources: ['patel-2019', 'hogan-1989', 'bramley-neave-1975', 'jasper-1980', 'okamoto-2018', 'cornell-solids', 'university-laboratory'],
    examples: [
      { call: ['coliforms', 'unused', 500], gives: 1, source: 'Patel 2019, quoted: coliforms at most 500 in unused bedding' },
      { call: ['coliforms', 'used', 10_000], gives: 1, source: 'Patel 2019, quoted: coliforms at most 10,000 in used bedding' },
      { call: ['klebsiella', 'unused', 20], gives: 'present', source: 'Patel 2019, quoted: no Klebsiella in unused bedding' },
    ],
  }),

  define({
    name: 'HYGIENE.PERVOLUME',
    summary: 'A count of germs per gram of bedding as a count per cm³.',
    finds: 'convert cfu, per gram to per cm3, per ml, lab units',
    parameters: [
      number('cfu_per_g', 'cfu/g', 'count per gram of bedding as it lay'),
      bulkDensity('density_kg_m3', 'bulk density of the sample as it lay'),
    ],
    compute: countPerVolume,
    result: 'cfu_per_cm3',
    working: {
      cfu_per_cm3: { says: 'Count per cm³', unit: 'cfu/cm³', how: 'cfu_per_g * density_kg_m3 / 1000' },
    },
    notes: ['The density of the sample itself: used bedding lies denser than unused, so weigh a litre of it as it lay.'],
    sources: ['patel-2019'],
    examples: [{ call: [1e6, 300], gives: 300_000, within: 1e-6, source: 'by hand: a million a gram at 0.3 g/cm³' }],
  }),
];
