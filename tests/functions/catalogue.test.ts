import { describe, expect, it } from 'vitest';
import { registry } from '../../src/functions/index.ts';
import catalogue from './catalogue.json';

/** Names, arguments and their order are what users' workbooks hold: they may gain optional arguments at the end, and never change. */
describe('the catalogue that workbooks depend on', () => {
  it('holds every function, and no other', () => {
    expect(registry.map(({ name }) => name).toSorted()).toEqual(Object.keys(catalogue).toSorted());
  });

  it.each(Object.entries(catalogue))('%s takes its arguments in their order', (name, given) => {
    const parameters = registry.find((record) => record.name === name)?.parameters ?? [];
    expect(parameters.map((parameter) => parameter.name).slice(0, given.length)).toEqual(given);
    expect(parameters.slice(given.length).every(({ fallback }) => fallback)).toBe(true);
  });
});
