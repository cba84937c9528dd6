import defaults from '../data/defaults.json';
import references from '../data/references.json';

/**
 * How far a figure can be trusted. Never upgrade one.
 * seen: read in the cited source; quoted: read in another document that cites it; memory: recalled, not checked;
 * computed: worked out from our own equations; practice: common practice in the trade, no source;
 * judgement: this project's own choice.
 */
export type Status = 'seen' | 'quoted' | 'memory' | 'computed' | 'practice' | 'judgement';

export type SourceId = keyof typeof references;

export interface Reference {
  readonly id: SourceId;
  /** The source in a few words, for a cell or a link. */
  readonly name: string;
  readonly reference: string;
  readonly status: Status;
}

export const bibliography: readonly Reference[] = Object.entries(references).map(([id, entry]) => ({
  id: id as SourceId,
  name: entry.name,
  reference: entry.reference,
  status: entry.status as Status,
}));

export const referenceOf = (id: SourceId): Reference => ({ id, ...references[id] }) as Reference;

/** A value taken when the user gives none, with where it comes from. */
export interface Fallback<Value = number | string | undefined> {
  readonly value: Value;
  readonly source: SourceId;
  readonly status: Status;
  /** What to show where the value is worked out rather than fixed, e.g. `the larger of ambient_c and 0`. */
  readonly shown?: string;
}

export type DefaultName = keyof typeof defaults;
type DefaultValue<Name extends DefaultName> = (typeof defaults)[Name]['value'];

/** The named figure of data/defaults.json. */
export function defaultOf<Name extends DefaultName>(name: Name): Fallback<DefaultValue<Name>> {
  return defaults[name] as unknown as Fallback<DefaultValue<Name>>;
}
