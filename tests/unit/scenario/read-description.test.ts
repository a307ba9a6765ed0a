import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problemListing, problemText } from '../../../src/scenario/problem.ts';
import { readDescription } from '../../../src/scenario/read-description.ts';
import { toy } from './toy.ts';

const read = (text: string) => readDescription(text, 'toy.yaml', toy);

function valuesOf(text: string) {
  const reading = read(text);
  if (!reading.ok) throw new Error(problemListing(reading.problems));
  return reading.values;
}

function problemsOf(text: string): string[] {
  const reading = read(text);
  return reading.ok ? [] : reading.problems.map(problemText);
}

describe('a description that is right', () => {
  it('falls back on every default', () => {
    const { load, ...plain } = valuesOf('bore: 16 mm');
    expect(plain).toEqual({
      title: 'untitled',
      atmosphere: { pressure: 101_325 },
      bore: 0.016,
      supply_pressure: 5e5,
      advance: 0,
      clearance: 0.1,
      spokes: 5,
      metal: 'steel',
      cut_off: { by: 'outward stroke', fraction: 0.5 },
      lap: undefined,
      drag: undefined,
      receiver: undefined,
      more_loads: [],
    });
    expect(load).toMatchObject({ kind: 'idle', values: {} });
  });

  it('reads every type of value', () => {
    const values = valuesOf(`
      title: "No. 3: brass"
      bore: 16 mm
      clearance: 6 %
      spokes: 6
      metal: brass
      cut_off: 90 % of return stroke
      lap: 2 mm
      drag: 0.001*rpm
      receiver: { volume: 50 L }
      load: { kind: brake, torque: 2 N m }
      more_loads: [{ kind: idle }, { kind: brake, torque: 1 N m, blocks: 3 }]
    `);
    expect(values).toMatchObject({
      title: 'No. 3: brass',
      clearance: 0.06,
      spokes: 6,
      metal: 'brass',
      lap: 0.002,
    });
    expect(values.cut_off).toEqual({ by: 'return stroke', fraction: 0.9 });
    expect(values.receiver).toEqual({ volume: 0.05 });
    expect(values.drag?.((100 * Math.PI) / 30)).toBeCloseTo(0.1, 12);
    expect(values.load.build(10)).toBe(40);
    expect(values.more_loads.map((load) => load.build(1))).toEqual([0, 3]);
  });

  it('counts gauge pressures from its own atmosphere, wherever that stands', () => {
    const text = 'bore: 16 mm\nsupply_pressure: 4 bar gauge\natmosphere:\n  pressure: 900 mbar absolute\n';
    expect(valuesOf(text).supply_pressure).toBeCloseTo(4.9e5, 6);
    expect(valuesOf('bore: 16 mm\nsupply_pressure: 4 bar gauge').supply_pressure).toBeCloseTo(501_325, 6);
    expect(valuesOf('bore: 16 mm\nsupply_pressure: 4 bar absolute').supply_pressure).toBe(4e5);
  });

  it('takes a value that meets its limit but for rounding', () => {
    expect(valuesOf('bore: 16 mm\nadvance: 6.283185307179587 rad').advance).toBe(2 * Math.PI);
    expect(valuesOf('bore: 16 mm\nadvance: -360 deg').advance).toBe(-2 * Math.PI);
  });

  it('keeps every text as it stands', () => {
    expect(
      ['no', '12:30', '0x10', '007'].map((title) => valuesOf(`bore: 16 mm\ntitle: ${title}`).title),
    ).toEqual(['no', '12:30', '0x10', '007']);
  });

  it('follows aliases', () => {
    expect(valuesOf('bore: &size 9 mm\nlap: *size').lap).toBe(0.009);
  });

  it('reads a file with a byte order mark and Windows line ends', () => {
    expect(valuesOf('\uFEFFbore: 16 mm\r\nspokes: 6\r\n').spokes).toBe(6);
    expect(problemsOf('\uFEFFbore: 16 mm\r\nspokes: 60\r\n')[0]).toContain('toy.yaml:2:9  spokes');
  });
});

describe('a description that is wrong', () => {
  it('tells everything at once, in file order', () => {
    expect(problemsOf('spokes: 2.5\nbore: 16\nmetal: bras\nrust: much\n')).toEqual([
      'toy.yaml:1:9  spokes: expected a whole number from 3 to 8, received "2.5".',
      'toy.yaml:2:7  bore: expected a length from 1 mm to 100 mm, received "16" (no unit). Write "16 mm".',
      'toy.yaml:3:8  metal: expected one of: steel, brass, received "bras". Did you mean "brass"?',
      'toy.yaml:4:1  expected only the keys title, atmosphere, bore, supply_pressure, advance, clearance, spokes, ' +
        'metal, cut_off, lap, drag, receiver, load, more_loads, received the unknown key "rust".',
    ]);
  });

  it('says what a missing key means', () => {
    expect(problemsOf('title: x')).toEqual([
      'toy.yaml:1:1  bore: expected a length from 1 mm to 100 mm, received nothing. Add "bore: 16 mm". Inside diameter.',
    ]);
  });

  it('does not call a mistyped key missing as well', () => {
    expect(problemsOf('boer: 16 mm')).toHaveLength(1);
    expect(problemsOf('boer: 16 mm')[0]).toContain('Did you mean "bore"?');
  });

  it.each([
    [
      'lap:',
      'lap: expected a length from 0 mm to 10 mm, received nothing. Leave the key out if nothing is to be said.',
    ],
    ['lap: 2 m', 'lap: expected a length from 0 mm to 10 mm, received "2 m" (too large).'],
    ['lap: [2 mm]', 'lap: expected a length from 0 mm to 10 mm, received a list. Write "lap: 2 mm".'],
    [
      'title: a title that is much too long',
      'title: expected a text of at most 20 characters, received "a title that is much too long" (29 characters).',
    ],
    [
      'load: brake',
      'load: expected a kind of load (brake, idle), received "brake". Write "kind: brake" on a line of its own.',
    ],
    [
      'load: { torque: 2 N m }',
      'load: expected a kind of load (brake, idle), received none. Write "kind: brake" on a line of its own.',
    ],
    [
      'load: { kind: idel }',
      'load.kind: expected a kind of load (brake, idle), received "idel". Did you mean "idle"?',
    ],
    [
      'load: { kind: brake }',
      'load.torque: expected a torque from 0 N·m to 10 N·m, received nothing. Add "torque: 2 N m". Torque.',
    ],
    [
      'more_loads: { kind: idle }',
      'more_loads: expected a list of at most 2 entries, each a kind of load (brake, idle), received a group of keys.',
    ],
    [
      'more_loads: [{kind: idle}, {kind: idle}, {kind: idle}]',
      'more_loads: expected a list of at most 2 entries, each a kind of load (brake, idle), received 3 entries.',
    ],
    [
      'receiver: {}',
      'receiver.volume: expected a volume from 0 L to 1000 L, received nothing. Add "volume: 50 L". Size.',
    ],
    ['receiver: big', 'receiver: expected a group with volume, received "big".'],
  ])('%s', (line, message) => {
    const problems = problemsOf(`bore: 16 mm\n${line}`);
    expect(problems.map((problem) => problem.replace(/^toy\.yaml:2:\d+ {2}/u, ''))).toEqual([message]);
  });

  it('names the line of the earlier key of two', () => {
    expect(problemsOf('bore: 16 mm\n\nbore: 17 mm')).toEqual([
      'toy.yaml:3:1  bore: expected each key once, received the key of line 1 again.',
    ]);
  });

  it('shows what it received without anything that disturbs a terminal', () => {
    const [problem = ''] = problemsOf(`bore: 16 mm\nmetal: "\\e[31m${'x'.repeat(100)}\\u202e"`);
    expect(problem).toContain(`received "\uFFFD[31m${'x'.repeat(55)}…"`);
  });
});

describe('a listing of problems', () => {
  it('stops after fifty and counts the rest', () => {
    const reading = read(`bore: 16 mm\n${Array.from({ length: 57 }, (_, i) => `extra_${i}: 1`).join('\n')}`);
    const lines = reading.ok ? [] : problemListing(reading.problems).split('\n');
    expect(lines).toHaveLength(51);
    expect(lines.at(-1)).toBe('… and 7 more.');
  });
});

describe('any text whatever', () => {
  const pieces = [
    ...Object.keys(toy),
    'kind',
    ': ',
    ':\n',
    '\n',
    '\n  ',
    '- ',
    '{',
    '}',
    '[',
    ']',
    ',',
    '"',
    "'",
    '|',
    '>',
    '#',
    '&a ',
    '*a',
    '!t ',
    '? ',
    '---\n',
    '%YAML 1.1\n',
    '\t',
    '\r',
    '16 mm',
    '4 bar gauge',
    'brake',
    '\u0000',
    '\uD800',
    '<<',
  ];
  const anyText = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.array(fc.constantFrom(...pieces), { maxLength: 40 }).map((parts) => parts.join('')),
  );

  it('is either right or has a problem with a place in the text', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const reading = read(text);
        const lines = text.replace(/^\uFEFF/u, '').split('\n');
        const problems = reading.ok ? [] : reading.problems;
        expect(reading.ok || problems.length > 0).toBe(true);
        for (const problem of problems) {
          const line = lines[problem.line - 1];
          expect(line).toBeDefined();
          expect(problem.column).toBeGreaterThanOrEqual(1);
          expect(problem.column).toBeLessThanOrEqual((line ?? '').length + 1);
          expect(problemText(problem)).not.toContain('\n');
        }
      }),
      { numRuns: 3000 },
    );
  });
});
