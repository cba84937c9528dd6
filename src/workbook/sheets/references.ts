import { bibliography } from '../../core/bibliography.ts';
import { cautions, conditionsFor, countries } from '../../domain/reference.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { inUse } from './inputs.ts';

/** Row by row, what stands there when no country is chosen, and when any one is. */
const listed = [undefined, ...countries].map((country) => conditionsFor(country).rows);
const conditionRows = (listed[0] ?? []).map((row, down) => row.map((_, right) => listed.map((rows) => rows[down]?.[right])));

export function conditionsSheet(): SheetBuilder {
  const page = new SheetBuilder('Conditions and cautions', [120, 440, 180, 75, 170], { landscape: true });
  page
    .title('Conditions and cautions', 'What to ask before you spend, and what can hurt. Local codes and the people named come first.')
    .part('Cautions: in every plan', 'From CAUTIONS.')
    .spill({ name: 'cautions', formula: '=BEDDING.CAUTIONS()', formats: [undefined, 'text', 'text'], says: cautions().rows })
    .part(
      'Conditions on using recycled manure solids',
      'For the country on Inputs, or every country where none is chosen. Rules change: recheck each one before you rely on it. From CONDITIONS.',
    )
    .spill({
      name: 'conditions',
      formula: `=BEDDING.CONDITIONS(${inUse('Country')})`,
      formats: [undefined, 'text', 'text', undefined, 'text'],
      says: conditionRows,
    });
  return page;
}

export function sourcesSheet(): SheetBuilder {
  const page = new SheetBuilder('Sources', [170, 700, 90]);
  page
    .title('Sources', 'Where every figure comes from, and how far it can be trusted.')
    .part('How to read the status')
    .line(['seen', 'read in the cited source'])
    .line(['quoted', 'read in another document that cites it'])
    .line(['memory', 'recalled, not checked: measure your own'])
    .line(['computed', 'worked out from our own equations'])
    .line(['practice', 'common practice in the trade, no source'])
    .line(['judgement', 'this project’s own choice, to be changed where you know better'])
    .part('The list', 'From SOURCES.')
    .spill({
      name: 'sources',
      formula: '=BEDDING.SOURCES()',
      formats: [undefined, 'text', undefined],
      says: bibliography.map(({ id, reference, status }) => [id, reference, status]),
    });
  return page;
}
