import { expect, it } from 'vitest';
import { columns, table } from '../../../src/cli/columns.ts';
import { plain } from '../../../src/cli/plain.ts';
import { evenly, spark } from '../../../src/cli/spark.ts';

it('a spark is as high as its values', () => {
  expect(spark([0, 1, 2, 3, 4, 5, 6, 7])).toBe('▁▂▃▄▅▆▇█');
  expect(spark([-3, -3])).toBe('▁▁');
  expect(spark([10, 0])).toBe('█▁');
});

it('values at equal distances lie on the lines between the rows', () => {
  expect(evenly([0, 1, 4], [0, 10, 40], 5)).toEqual([0, 10, 20, 30, 40]);
  expect(evenly([0, 0, 2], [5, 7, 7], 3)).toEqual([5, 7, 7]);
});

it('columns stand under each other, whatever their letters', () => {
  expect(
    columns([
      ['η', '1'],
      ['speed', '2'],
    ]),
  ).toBe('  η       1\n  speed   2');
  expect(columns([['a', 'one two three']], '', 10)).toBe('a   one\n    two\n    three');
  expect(
    table(
      ['', 'A', 'B'],
      [
        ['speed', '1 rpm', '200 rpm'],
        ['η', '5 %', '–'],
      ],
    ),
  ).toBe(['              A         B', '  speed   1 rpm   200 rpm', '  η         5 %         –'].join('\n'));
});

it('a text from a file cannot move the cursor', () => {
  expect(plain('a\u001b[2Jb\u202ec')).toBe('a\uFFFD[2Jb\uFFFDc');
});
