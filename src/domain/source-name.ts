import references from '../data/references.json';

/** A source in a few words, as a cell shows it; SOURCES has it in full. */
export const sourceName = (id: string): string => references[id as keyof typeof references].name;

/** A text of the data with the ids of sources in it put into words. */
export const withSourceNames = (text: string): string =>
  text.replace(/\b[a-z0-9]+(?:-[a-z0-9]+)+\b/g, (word) => (word in references ? sourceName(word) : word));
