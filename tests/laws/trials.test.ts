/**
 * What is said of an engine after a change is true of the engine with that change: its scenario is read anew with the
 * value that was named, and run.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeableEngine, scenarioReader, settingOverride } from '../../src/index.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { Drive } from '../../src/run/drive-result.ts';
import type { RunResult } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import type { ChangedSetting, Trials } from '../../src/run/trials.ts';
import type { ChangeableEngine } from '../../src/study/remedies/remedy.ts';
import { withTrials } from '../../src/study/remedies/with-trials.ts';
import { verdictOf } from '../../src/verdict/verdict.ts';

type Said = Readonly<Record<string, string>>;

/** A shipped scenario with other values, as `tickover run --set` reads it. */
function engineOf(name: string, said: Said = {}): ChangeableEngine {
  const file = `scenarios/${name}.yaml`;
  const reader = scenarioReader(readFileSync(file, 'utf8'), file);
  if (!reader.ok) throw new Error(`${name} cannot be read`);
  const reading = changeableEngine(
    reader,
    Object.entries(said).map(([path, value]) => settingOverride({ path, value })),
  );
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.engine;
}

const readAnew = ({ changed }: ChangeableEngine, settings: readonly ChangedSetting[]): EngineSpec =>
  changed(settings.map(({ path, then }) => ({ path, value: then })))!;

const trialsOf = (result: RunResult): Trials => {
  if (!result.trials) throw new Error(result.outcome.kind);
  return result.trials;
};

/** Each does not run, for a reason of its own; what helps, and what is not enough. */
const spoilt: readonly (readonly [
  why: string,
  file: string,
  said: Said,
  helps: Said,
  notEnough: string[],
])[] = [
  ['wide gaps', 'cider-press-disc', {}, { 'valve_gear.face_gap': '45 um' }, ['90 um']],
  [
    'a load too heavy',
    'cider-press',
    { 'load.torque': '3.2 + 0.0025*rpm' },
    { 'supply.pressure': '4 bar gauge' },
    [],
  ],
  [
    'a load far too heavy',
    'cider-press',
    { 'load.torque': '6 + 0.0025*rpm' },
    { 'supply.pressure': '6 bar gauge', 'load.torque': '0.5*(6 + 0.0025*rpm)' },
    ['4 bar gauge', '0.75*(6 + 0.0025*rpm)'],
  ],
  ['too short a look', 'cider-press', { 'run.longest_time': '1 s' }, { 'run.longest_time': '10 s' }, []],
];

describe.each(spoilt)('an engine with %s', (_why, file, said, helps, notEnough) => {
  const engine = engineOf(file, said);
  const before = runEngine(engine.spec);
  const { running, inVain } = trialsOf(withTrials(before, engine));
  const settings = running!.changes.flatMap((own) => own.settings);
  const after = runEngine(readAnew(engine, settings));

  it('does not run as it is, and is told what helps', () => {
    expect(before.settled).toBeUndefined();
    expect(Object.fromEntries(settings.map(({ path, then }) => [path, then]))).toEqual(helps);
    expect(running!.notEnough?.map(({ then }) => then) ?? []).toEqual(notEnough);
  });

  it('runs with the change as foretold', () => {
    expect(after.outcome.kind).toBe('settled');
    expect(Math.abs(after.settled!.speed / running!.answer.speed - 1)).toBeLessThan(0.01);
    expect(after.settled!.brakePower).toBeCloseTo(running!.answer.brakePower, 6);
    expect(after.compressor).toEqual(running!.answer.compressor);
  });

  it('does not run with what is said not to be enough, nor to help', () => {
    const tried = [
      ...(running!.notEnough ? [running!.notEnough] : []),
      ...inVain.map((own) => own.change.settings),
    ];
    expect(tried.filter((own) => runEngine(readAnew(engine, own)).settled)).toEqual([]);
  });
});

it('started from the middle of where its start map has it start, an engine runs', () => {
  const engine = engineOf('cider-press', { 'start.crank_angle': '-20 deg' });
  const before = runEngine(engine.spec);
  expect(before.settled).toBeUndefined();
  const positions = Array.from({ length: 24 }, (_, i) => ({
    crankAngle: (i * Math.PI) / 12,
    startsUnaided: i >= 1 && i <= 3,
  }));
  const drive = { startMap: { positions, unaidedShare: 0.125 } } as unknown as Drive;
  const { running, unaidedShareNow } = trialsOf(withTrials({ ...before, drive }, engine));
  expect(running?.changes[0].settings[0]?.then).toBe('30 deg');
  expect([unaidedShareNow, running?.answer.unaidedShare]).toEqual([0.125, undefined]);
  expect(runEngine(readAnew(engine, running!.changes[0].settings)).settled?.speed).toBe(
    running!.answer.speed,
  );
});

it('goes to a smaller gap than would do, if the compressor is the better for it', () => {
  const dutyWith = (gap: string): number =>
    runEngine(engineOf('cider-press-disc', { 'valve_gear.face_gap': gap }).spec).compressor!.duty;
  expect(dutyWith('45 um')).toBeLessThan(0.9 * dutyWith('60 um'));
});

it('tries nothing on an engine that runs, that nothing ails, or that no change can help', () => {
  const untouchable = (engine: ChangeableEngine): ChangeableEngine => ({
    ...engine,
    changed: () => expect.unreachable('an engine was changed'),
  });
  const runsWell = engineOf('cider-press');
  const result = runEngine(runsWell.spec);
  expect(withTrials(result, untouchable(runsWell))).toBe(result);
  const broken: RunResult = { ...result, outcome: { ...result.outcome, kind: 'step-limit' } };
  expect(withTrials(broken, untouchable(runsWell))).toBe(broken);
  const reverse = engineOf('cider-press', { running_direction: 'reverse' });
  const setOver = runEngine(reverse.spec);
  expect(setOver.settled).toBeUndefined();
  expect(withTrials(setOver, untouchable(reverse))).toBe(setOver);
});

describe('a random engine that does not run', () => {
  const factor = (most: number): fc.Arbitrary<number> => fc.double({ min: 0.2, max: most, noNaN: true });
  const spoiling = fc.record({
    file: fc.constantFrom(
      'fair-boat-oscillating',
      'skein-winder-windows',
      'gate-opener-electric',
      'cider-press-disc',
    ),
    angle: fc.integer({ min: -180, max: 360 }),
    pressure: factor(3),
    friction: factor(12),
    time: fc.constantFrom('1 s', '5 s'),
  });

  it('gets words with finite numbers only', () => {
    let tried = 0;
    fc.assert(
      fc.property(spoiling, ({ file, angle, pressure, friction, time }) => {
        const engine = engineOf(file, {
          'start.crank_angle': `${angle} deg`,
          'supply.pressure': `${pressure} bar gauge`,
          'friction.running_torque': `${0.1 * friction} N m`,
          'friction.breakaway_torque': `${0.2 * friction} N m`,
          'run.longest_time': time,
        });
        const result = withTrials(runEngine(engine.spec), engine);
        if (!result.trials) return;
        tried += 1;
        for (const units of ['metric', 'imperial'] as const) {
          const { nextChange } = verdictOf(result, units);
          expect(nextChange).not.toMatch(/NaN|Infinity|undefined|not known|null/u);
          expect(nextChange).toMatch(/\.$/u);
        }
      }),
      { numRuns: 6, seed: 6 },
    );
    expect(tried).toBeGreaterThan(3);
  });
});
