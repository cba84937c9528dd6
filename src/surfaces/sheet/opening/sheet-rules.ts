import { most } from '../most.ts';
import { converted, lettersOf, type Names, NotHere, tokens } from './formula.ts';
import { type Place, placeOf } from './sheet-cells.ts';
import { childrenOf, type Element, textOf, written } from './xml.ts';

/** Rules of a sheet as the grid's own reader takes them, and how many the file has. */
export interface Rules {
  readonly xml: string;
  readonly count: number;
}

/** The blocks that a rule holds for, cut off where the sheet ends: programs write whole columns down to their last row. */
function blocksWithin(blocks: string, { row, column }: Place): string {
  return blocks
    .split(/\s+/)
    .flatMap((block) => {
      const [from = '', to = from] = block.split(':');
      const [start, end] = [placeOf(from), placeOf(to)];
      if (!start || !end || start.row > row || start.column > column) return [];
      return `${from}:${lettersOf(Math.min(end.column, column))}${Math.min(end.row, row)}`;
    })
    .join(' ');
}

function formulaHere(text: string, names: Names): string {
  if (text.length > most.lettersInFormula) throw new NotHere('form');
  return converted(tokens(text), names);
}

/** A rule with its formulas as they are written here, or none where they cannot be. */
function ruleHere(rule: Element, names: Names): readonly Element[] {
  try {
    const children = rule.children.map((child) =>
      typeof child !== 'string' && child.name.startsWith('formula') ? { ...child, children: [formulaHere(textOf(child), names)] } : child,
    );
    return [{ ...rule, children }];
  } catch (fault) {
    if (fault instanceof NotHere) return [];
    throw fault;
  }
}

/** Colours by rule (ECMA-376 part 1, 18.3.1.18). */
export function colourRules(groups: readonly Element[], names: Names, within: Place): Rules {
  const all = groups.flatMap((group) => childrenOf(group, 'cfRule').map((rule) => ({ rule, sqref: group.attributes['sqref'] ?? '' })));
  const kept = all.slice(0, most.rules).flatMap(({ rule, sqref }): Element[] => {
    const blocks = blocksWithin(sqref, within);
    const children = blocks === '' ? [] : ruleHere(rule, names);
    return children.length === 0 ? [] : [{ name: 'conditionalFormatting', attributes: { sqref: blocks }, children }];
  });
  return { xml: kept.map(written).join(''), count: all.length };
}

/** What may be entered (ECMA-376 part 1, 18.3.1.32). The grid has no rule for whole numbers: the same for any number stands in its place. */
export function entryRules(groups: readonly Element[], names: Names, within: Place): Rules {
  const all = groups.flatMap((group) => childrenOf(group, 'dataValidation'));
  const kept = all.slice(0, most.rules).flatMap((rule) => {
    const sqref = blocksWithin(rule.attributes['sqref'] ?? '', within);
    const type = rule.attributes['type'] === 'whole' ? 'decimal' : (rule.attributes['type'] ?? 'none');
    const operator = rule.attributes['operator'] ?? 'between';
    return sqref === '' || type === 'none' ? [] : ruleHere({ ...rule, attributes: { ...rule.attributes, type, operator, sqref } }, names);
  });
  const xml = kept.map(written).join('');
  return {
    xml: xml && `<dataValidations>${xml}</dataValidations>`,
    count: all.filter(({ attributes }) => (attributes['type'] ?? 'none') !== 'none').length,
  };
}
