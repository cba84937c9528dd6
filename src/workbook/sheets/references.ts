import { bibliography } from '../../core/bibliography.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { inUse } from './inputs.ts';

/** Room for every country's rules when none is chosen. */
const mostConditions = 80;
const mostCautions = 14;

export function conditionsSheet(): SheetBuilder {
  const page = new SheetBuilder('Conditions and cautions', [130, 560, 220, 75, 270], { landscape: true });
  page
    .title('Conditions and cautions', 'What to ask before you spend, and what can hurt. Local codes and the people named come first.')
    .part('Cautions: in every plan', 'From CAUTIONS.')
    .spill({ name: 'cautions', formula: '=BEDDING.CAUTIONS()', rows: mostCautions, formats: [undefined, 'text', 'text'], lines: 3 })
    .part(
      'Conditions on using recycled manure solids',
      'For the country on Inputs, or every country where none is chosen. Rules change: recheck each one before you rely on it. From CONDITIONS.',
    )
    .spill({
      name: 'conditions',
      formula: `=BEDDING.CONDITIONS(${inUse('Country')})`,
      rows: mostConditions,
      formats: [undefined, 'text', 'text', undefined, 'text'],
      lines: 2,
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
      rows: bibliography.length + 10,
      formats: [undefined, 'text', undefined],
      lines: 2,
    });
  return page;
}
