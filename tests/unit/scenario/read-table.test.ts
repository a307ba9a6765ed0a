/** Tables beside a scenario: whatever way a spreadsheet writes them, and what wears out a reader. */
import { describe, expect, it } from 'vitest';
import { optional, table } from '../../../src/kinds/describe.ts';
import type { Attachments } from '../../../src/scenario/attachments.ts';
import { problemListing } from '../../../src/scenario/problem.ts';
import { readDescription } from '../../../src/scenario/read-description.ts';

const curve = table({
  argument: {
    name: 'crank_angle',
    dimension: 'angle',
    unit: 'deg',
    min: 0,
    max: 2 * Math.PI,
    largestStep: 2,
  },
  columns: {
    lift: { dimension: 'length', unit: 'mm', min: 0, max: 0.01 },
    spring_force: { dimension: 'force', unit: 'N', min: -5, max: 5 },
  },
  mostRows: 9,
  doc: 'A curve.',
  example: 'curve.csv',
});

const rows = [
  'crank_angle_deg,lift_mm,spring_force_N',
  '0,1.5,-2',
  '100,0,0',
  '200,3,1e0',
  '300,2,4',
  '360,1.5,-2',
];

function reading(text: string, file = 'engines/press.yaml', attachments?: Attachments) {
  const given = attachments ?? (() => ({ ok: true, text }) as const);
  return readDescription('curve: sub/curve.csv\n', file, { curve }, given);
}

function said(lines: readonly string[]): string {
  const own = reading(lines.join('\n'));
  return own.ok ? 'nothing wrong' : problemListing(own.problems);
}

describe('a table', () => {
  it('comes in SI, with the name it was given', () => {
    const own = reading(rows.join('\n'));
    if (!own.ok) throw new Error(problemListing(own.problems));
    const { file, argument, columns } = own.values.curve;
    expect(file).toBe('sub/curve.csv');
    expect(argument[1]).toBeCloseTo((100 * Math.PI) / 180, 12);
    expect(argument.at(-1)).toBe(2 * Math.PI);
    expect(columns).toEqual({ lift: [0.0015, 0, 0.003, 0.002, 0.0015], spring_force: [-2, 0, 1, 4, -2] });
  });

  it.each([
    ['Windows line ends', rows.join('\r\n')],
    ['old line ends', rows.join('\r')],
    ['mixed line ends', rows.join('\n').replace('\n', '\r\n')],
    ['a byte order mark', `\uFEFF${rows.join('\n')}`],
    ['blank lines', rows.join('\n\n')],
    ['spaces about the cells', rows.join('\n').replaceAll(',', ' , ')],
    [
      'quotes about the headers',
      rows.join('\n').replace(/^.*$/mu, (head) => `"${head.replaceAll(',', '","')}"`),
    ],
  ])('may have %s', (_form, text) => {
    const own = reading(text);
    expect(own.ok ? own.values.curve : own.problems).toMatchObject({ columns: { lift: { length: 5 } } });
  });

  it('is named in messages from where the scenario stands', () => {
    const own = reading('nonsense', 'engines/press.yaml');
    expect(own.ok ? [] : own.problems.map(({ file }) => file)[0]).toBe('engines/sub/curve.csv');
    const alone = reading('nonsense', 'press.yaml');
    expect(alone.ok ? [] : alone.problems.map(({ file }) => file)[0]).toBe('sub/curve.csv');
  });

  it('points at the cell, also behind blank lines', () => {
    expect(said([...rows.slice(0, 3), '', '', '200, 30 ,1', ...rows.slice(4)])).toBe(
      'engines/sub/curve.csv:6:6  lift_mm: expected a number of mm from 0 to 10, received "30" (too large).',
    );
  });

  it('cannot be too long', () => {
    const many = [...rows.slice(0, 2), ...Array.from({ length: 10 }, () => '100,0,0'), ...rows.slice(2)];
    expect(said(many)).toContain(':11:1  expected at most 9 rows of numbers');
    expect(said([...rows, '0'.repeat(1500)])).toContain('expected rows of at most 1000 characters');
    expect(said([...rows, ' \n'.repeat(600_000)])).toContain('expected at most 1 million characters');
  });

  it('does not close by rounding alone', () => {
    expect(said([...rows.slice(0, -1), '360,1.5000001,-2'])).toBe('nothing wrong');
    expect(said([...rows.slice(0, -1), '360,1.51,-2'])).toContain('the value of the first row again, 1.5');
  });

  it('is not to be had when nobody hands over files', () => {
    const own = readDescription('curve: curve.csv\n', 'press.yaml', { curve });
    expect(own.ok ? '' : problemListing(own.problems)).toContain(
      'files beside the scenario cannot be read here',
    );
  });

  it('may be left out where it is optional', () => {
    const own = readDescription('{}\n', 'press.yaml', { curve: optional(curve) });
    expect(own.ok ? own.values : own.problems).toEqual({ curve: undefined });
  });
});
