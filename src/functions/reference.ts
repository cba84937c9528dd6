import { bibliography } from '../core/bibliography.ts';
import { defineSpill } from '../core/define.ts';
import { choice, maybe } from '../core/parameters.ts';
import { cautions, conditionsFor, countries } from '../domain/reference.ts';

const sourceList = () => ({ rows: bibliography.map(({ id, reference, status }) => [id, reference, status]) });

export const reference = [
  defineSpill({
    name: 'SOURCES',
    summary: 'Where every figure comes from, and how far it was checked.',
    finds: 'bibliography, references, studies, status, evidence',
    parameters: [],
    compute: sourceList,
    columns: ['id', 'reference', 'status'],
    working: {},
    sources: ['project'],
    examples: [{ call: [], at: ['rendos-1975', 'status'], gives: 'seen', source: 'by hand: its abstract was read' }],
  }),

  defineSpill({
    name: 'CONDITIONS',
    summary: 'Rules on bedding cows on manure fibre, as far as known. Recheck every one with the authority and your milk buyer.',
    finds: 'law, permission, allowed, legal, rules, country, milk buyer, licence',
    parameters: [maybe(choice('country', 'country whose rules to list', countries), 'all countries')],
    compute: conditionsFor,
    columns: ['country', 'rule', 'source', 'date', 'recheck with'],
    working: {},
    sources: [
      'gb-levy-body',
      'gb-assurance',
      'gb-conditions-2014',
      'gb-approved-plants',
      'ni-note-2013',
      'german-farm-source',
      'dutch-milk-2015',
      'leach-2015',
      'ec-1069-2009',
      'eu-142-2011',
      'milk-buyers',
      'none-found',
      'unchecked',
    ],
    examples: [{ call: ['Germany'], at: ['Germany', 'date'], gives: 'not dated', source: 'by hand: the farm page bears no date' }],
  }),

  defineSpill({
    name: 'CAUTIONS',
    summary: 'The usual cautions about slurry, plant, udders, law and money, and who to ask. Local codes come first.',
    finds: 'safety, danger, slurry gas, fire, guards, scald, dust, vet, warnings',
    parameters: [],
    compute: cautions,
    columns: ['hazard', 'caution', 'ask'],
    working: {},
    sources: ['hseni-slurry', 'slurry-entry', 'hse-eh40', 'basinas-2014', 'fibre-growth-2024', 'practice', 'project', 'awiszus-2018'],
    examples: [{ call: [], at: ['udder health', 'ask'], gives: 'your vet', source: 'common practice, no source' }],
  }),
];
