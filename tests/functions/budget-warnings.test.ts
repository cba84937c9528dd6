import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import { herd, type Inputs, inputs, recordOf, rowOf, sentence, warningsOf, without } from './worked-herd.ts';

describe('each warning', () => {
  const fires: [string, Inputs][] = [
    ['Cover', { 'Slurry litres per cow': 30 }],
    ['Coldest cover', { 'Slurry litres per cow': 30 }],
    ['Thin margin', { 'Slurry litres per cow': 45 }],
    ['Press hours', { 'Press hours a day': 5 }],
    ['Dryer hours', { 'Dryer hours a day': 10 }],
    ['Heat sets the limit', { 'Heat available kW': 30 }],
    ['Stated output', {}],
    ['Stated drum', { 'Stated retention hours': 8, 'Stated output m3 per hour': 3 }],
    ['Heat per kg', { 'Exhaust humidity': 0.3, 'Heat loss': 0.5 }],
    ['Frost', { 'Coldest month temperature': 4 }],
    ['Dust', { 'Dried to dry matter': 0.61 }],
    ['Very dry', { 'Dried to dry matter': 0.7 }],
    ['Wet press', { 'Pressed dry matter': 0.3 }],
    ['Cow dry matter', { 'Slurry dry matter': 0.03 }],
    ['Payback', { 'Kit cost': 400_000 }],
    ['Discounted payback', {}],
    ['NPV', {}],
    ['Loan cover', {}],
    ['Loan term', { 'Loan years': 12 }],
    ['Old price', { 'Price date': 45_000, 'Budget date': 45_400 }],
    ['After capital', {}],
    ['Mastitis margin', { 'Cases per 100 now': 70 }],
    ['Score', { 'Shed temperature': 20 }],
    ['Band edge', {}],
    ['Worse than now', {}],
    ['Interval', {}],
    ['No dryer', { 'Dried to dry matter': 0.355 }],
    ['Stocking', { Cows: 450 }],
    ['Permission', {}],
    ['Digested or composted', { 'Fibre kind': 'digested fibre' }],
    ['Invoice', { 'Bought t last year': 90 }],
    ['Amount now assumed', {}],
    ['Sand in slurry', { 'Material now': 'sand' }],
    ['Bedding in slurry', {}],
    ['Load volume', {}],
    ['Borrowed', { Grant: 50_000 }],
  ];
  const calm: Inputs = {
    ...without('Stated output m3 per hour', 'Borrowed', 'Loan years', 'Loan rate'),
    'Kit cost': 50_000,
    'Bought price per t': 400,
    'Days between beddings': 1,
    'Bedding litres per cubicle each time': 9,
    'Shed temperature': 5,
    'Dirty udders': 0.1,
    'Bought dry matter': 0.5,
    'Dried to dry matter': 0.6,
    'Permission confirmed': 'yes',
    'Cases per 100 now': 20,
    'Load t': 15,
    'Litres now': 5,
    'Slurry dry matter': 0.09,
    'Share of dry matter caught': 0.4,
  };

  it.each(fires)('%s fires', (key, change) => {
    expect(warningsOf({ ...inputs, ...change })).toContain(key);
  });

  it('stays quiet where all is well', () => {
    expect(warningsOf(calm)).toEqual([]);
  });

  it('compares dates, and asks for one where text was typed', () => {
    const dated = { 'Price date': 45_000, 'Budget date': 45_365 };
    expect(warningsOf({ ...inputs, ...dated })).not.toContain('Old price');
    expect(warningsOf({ ...inputs, ...dated, 'Budget date': 45_366 })).toContain('Old price');
    const typed = call(recordOf('BUDGET.HERDS'), [[['Price date']], [['1 May 2024']], [['Slurry']]]);
    expect(sentence(typed[1]?.[1])).toMatch(/Price date \(date\): "1 May 2024" is text, not a number; enter a date that the sheet knows/);
  });

  it('says measure it just above what the air carries, and not with this air well above', () => {
    const meaning = (stated: number) =>
      String(rowOf(herd({ ...inputs, 'Stated output m3 per hour': stated }), 'Warning: Stated output')[3]);
    expect(meaning(0.5)).toMatch(/^Measure it/);
    expect(meaning(0.65)).toMatch(/^Not with this air, if density/);
    expect(meaning(1)).toMatch(/^Not with this air, even with fresh fibre at 200 kg/);
  });
});
