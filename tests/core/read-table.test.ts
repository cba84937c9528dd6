import { expect, test } from 'vitest';
import { number, optional, text } from '../../src/core/parameters.ts';
import { readRow, readTable } from '../../src/core/read-table.ts';
import { CellError } from '../../src/core/result.ts';

const columns = [
  text('bedding', 'its name'),
  number('price', 'per t', 'its price'),
  optional(number('loss', 'fraction', 'lost'), { value: 0.1, source: 'project', status: 'judgement' }),
] as const;
const read = (table: readonly (readonly unknown[])[]) => readTable('options', table, () => columns);

function refusedBy(reading: () => unknown): CellError {
  try {
    reading();
  } catch (thrown) {
    if (thrown instanceof CellError) return thrown;
    throw thrown;
  }
  throw new Error('was not refused');
}

test('rows keep the number they have in the range, and blank ones are passed over', () => {
  const rows = read([
    ['sand', 16, 0],
    [null, null, null],
    ['straw', 80, 0.2],
    ['', null, ''],
  ]);
  expect(rows).toMatchObject([
    { row: 1, values: ['sand', 16, 0] },
    { row: 3, values: ['straw', 80, 0.2] },
  ]);
});

test('a blank cell takes the default of its column', () => expect(read([['sand', 16, null]])[0]?.values).toEqual(['sand', 16, 0.1]));

test('a bad cell is refused with its row, its column and what would do', () => {
  const { code, message } = refusedBy(() =>
    read([
      ['sand', 16, 0],
      ['straw', 'dear', 0],
    ]),
  );
  expect(code).toBe('#VALUE!');
  expect(message).toBe('options row 2, price (per t): "dear" is text, not a number; enter a number from 0 to 1,000,000');
});

test('a missing cell is named, and all that is wrong is said together', () => {
  const { message } = refusedBy(() =>
    read([
      ['sand', null, 0],
      ['straw', -1, 20],
    ]),
  );
  expect(message.split(' | ')).toEqual([
    expect.stringMatching(/^options row 1, price \(per t\): is missing; enter /),
    expect.stringMatching(/^options row 2, price \(per t\): -1 is below 0; enter /),
    'options row 2, loss (fraction): 20 is above 1; enter 20% or 0.2',
  ]);
});

test('#N/A in a cell stays #N/A; another error asks for that cell to be mended', () => {
  expect(refusedBy(() => read([['sand', { code: '#N/A' }, 0]])).code).toBe('#N/A');
  const other = refusedBy(() => read([['sand', { code: '#REF!' }, 0]]));
  expect(other.code).toBe('#VALUE!');
  expect(other.message).toContain('options row 1, price (per t): the cell it reads holds an error; mend that cell first');
});

test('a range of the wrong width is refused with the columns it must have', () => {
  const { code, message } = refusedBy(() => read([['sand', 16]]));
  expect(code).toBe('#VALUE!');
  expect(message).toBe('options (table): has 2 columns; enter 3: bedding, price, loss');
});

test('one row can be read for itself, and hands its error back', () => {
  expect(readRow('herds row 4', columns, ['sand', 16, 0])).toEqual(['sand', 16, 0]);
  const bad = readRow('herds row 4', columns, ['sand', true, 0]);
  expect(bad).toBeInstanceOf(CellError);
  expect((bad as CellError).message).toMatch(/^herds row 4, price \(per t\): TRUE is not a number; enter /);
});
