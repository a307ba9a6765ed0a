/** What a notebook of attempts teaches. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Finding } from '../../../src/measure/finding.ts';
import { firstBelief, storyOf, type Bench } from '../../../src/measure/attempts/learning.ts';
import type { Attempt } from '../../../src/measure/attempts/attempt.ts';
import { notebookFinding } from '../../../src/measure/attempts/notebook.ts';
import { problemListing } from '../../../src/scenario/problem.ts';
import { readAttempts } from '../../../src/scenario/read-attempts.ts';
import { shipped } from './sheets.ts';

const notebook = `title: Press
atmosphere: { pressure: 1013 mbar absolute, temperature: 12 degC }
engine: press-as-drawn.yaml
unknowns:
  leaks.0.clearance: 12 um
  valve_gear.discharge_coefficient: 0.65
attempts:
  - { kind: ran, what: As drawn, speed: 266 rpm, speed_within: 3 rpm, air_flow: 46 L/min, air_flow_within: 4 % }
  - { kind: measured, what: Gauge, found: { leaks.0.clearance: 24 um }, within: 10 % }
  - { kind: did not run, what: Half the pressure, supply_pressure: 0.6 bar gauge }
`;

function notebookOf(text: string) {
  const reading = readAttempts(text, 'attempts.yaml', (path) => ({ ok: true, text: shipped(path) }));
  if (!reading.ok) throw new Error(problemListing(reading.problems));
  return reading.attempts.notebook;
}

describe('a run, a bench test and a failure', () => {
  let found: Finding;
  beforeAll(() => {
    found = notebookFinding(notebookOf(notebook));
  });

  it('foretells each run before it learns from it', () => {
    const [run, test, stood] = found.tables![0]!.rows;
    expect(run).toMatchObject([
      '1. As drawn',
      'nothing',
      '295',
      expect.stringMatching(/^295 ± \d+$/),
      '266',
      '–',
    ]);
    expect(test![4]).toBe('leaks.0.clearance 24 um (within 10 %)');
    expect(stood!.slice(2, 5)).toEqual(['stands', 'stands', 'stands']);
  });

  it('knows both values better afterwards', () => {
    const [gap, discharge] = found.estimates;
    expect(gap!.low).toBeGreaterThan(20);
    expect(gap!.high).toBeLessThan(28);
    expect(discharge!.low).toBeGreaterThan(0.5);
    expect(discharge!.high).toBeLessThan(0.6);
    expect(found.statements[0]).toMatch(/^leaks\.0\.clearance: guessed 12 um, now .* times better known/);
  });

  it('puts the tests in the order of what they would tell, and names the first', () => {
    const rows = found.tables![1]!.rows;
    const gains = rows.map(([, share]) => Number.parseFloat(share!));
    expect(gains).toEqual(gains.toSorted((a, b) => b - a));
    expect(found.next).toContain(`What would tell most is ${rows[0]![0]!}`);
    expect(gains.every((own) => own >= 0 && own <= 100)).toBe(true);
  });
});

describe('learning from bench tests alone', () => {
  const at = { file: '', line: 0, column: 0 };
  const setting = (value: string) => ({ path: ['leaks', '0', 'clearance'], value, at });
  const entry = { what: '', when: '', changed: [] };
  const measured = (value: string): Attempt => ({
    ...entry,
    happened: 'measured',
    found: [setting(value)],
    within: 0.1,
  });
  // Nothing is run, so no engine is asked.
  const bench = { room: { pressure: 101_300, temperature: 285 } } as Bench;
  const before = firstBelief([setting('12 um')], 2);

  it('takes the mean of two tests that are equally good', () => {
    const { after } = storyOf(bench, [measured('20 um'), measured('24 um')], before, 2);
    expect(12 * Math.exp(after.knowledge.mean[0]!)).toBeCloseTo(21.9, 0);
  });

  it('forgets what it knew about a part that was made anew', () => {
    const anew: Attempt = { ...measured('9 um'), changed: [setting('8 um')] };
    const { after, chapters } = storyOf(bench, [measured('24 um'), anew], before, 2);
    expect(after.unknowns[0]!.guess).toBe(8);
    expect(8 * Math.exp(after.knowledge.mean[0]!)).toBeCloseTo(9, 0);
    expect(chapters[0]!.after.unknowns[0]!.guess).toBe(12);
  });
});
