import { defaultOf } from '../core/bibliography.ts';
import { define } from '../core/define.ts';
import { number, optional } from '../core/parameters.ts';
import { herdDemand } from '../domain/demand.ts';

export const demand = [
  define({
    name: 'DEMAND.HERD',
    summary: 'Bedding that a herd uses in a year.',
    finds: 'how much bedding, tonnes, annual use, need',
    parameters: [
      number('cubicles', 'cubicles', 'cubicles bedded', { min: 1 }),
      number('kg_cubicle_day', 'kg', 'bedding laid per cubicle per day, fresh mass'),
      optional(number('housed_days', 'days/year', 'days a year the cubicles are bedded', { min: 1 }), defaultOf('housed_days')),
      optional(number('loss', 'fraction', 'share lost in store, handling and dosing', { below: 1 }), defaultOf('housed_days')),
    ],
    compute: herdDemand,
    result: 't_year',
    working: {
      laid_t_year: { says: 'Laid in the cubicles', unit: 't/year', how: 'cubicles * kg_cubicle_day * housed_days / 1000' },
      t_year: { says: 'Needed, with what is lost', unit: 't/year', how: 'laid_t_year / (1 - loss)' },
    },
    sources: [],
    examples: [],
  }),
];
