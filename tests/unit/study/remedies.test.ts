/** What each remedy offers to change, and in which steps. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { changeableEngine, scenarioReader, settingOverride } from '../../../src/index.ts';
import type { Drive, StartPosition } from '../../../src/run/drive-result.ts';
import type { RunResult } from '../../../src/run/result.ts';
import { closerFit } from '../../../src/study/remedies/closer-fit.ts';
import { heavierFlywheel } from '../../../src/study/remedies/heavier-flywheel.ts';
import { laterCutOff } from '../../../src/study/remedies/later-cut-off.ts';
import { lessDrag } from '../../../src/study/remedies/less-drag.ts';
import { lighterLoad } from '../../../src/study/remedies/lighter-load.ts';
import { longerLook } from '../../../src/study/remedies/longer-look.ts';
import { morePressure } from '../../../src/study/remedies/more-pressure.ts';
import { pushByHand } from '../../../src/study/remedies/push-by-hand.ts';
import { remedyRules } from '../../../src/study/remedies/registry.ts';
import type { ChangeableEngine, Remedy } from '../../../src/study/remedies/remedy.ts';
import { startingPosition } from '../../../src/study/remedies/starting-position.ts';
import { widerHose } from '../../../src/study/remedies/wider-hose.ts';
import { noStartResult, notSettledResult } from '../report/synthetic-result.ts';

type Said = Readonly<Record<string, string>>;

function engineOf(said: Said = {}, name = 'cider-press'): ChangeableEngine {
  const file = `scenarios/${name}.yaml`;
  const reader = scenarioReader(readFileSync(file, 'utf8'), file);
  if (!reader.ok) throw new Error(`${name} cannot be read`);
  const overrides = Object.entries(said).map(([path, value]) => settingOverride({ path, value }));
  const reading = changeableEngine(reader, overrides);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.engine;
}

const RPM = Math.PI / 30;
const DEGREE = Math.PI / 180;
const engine = engineOf();

/** The values of the rungs one after the other, those of one rung joined. */
const values = (remedy: Remedy | undefined): string[] | undefined =>
  remedy?.rungs.map((rung) => rung.map(({ then }) => then).join(' | '));

/** The first leak of a result at rest is named so. */
const leaking = (name: string): RunResult => ({
  ...noStartResult,
  standStill: { ...noStartResult.standStill!, leaks: [{ name, massFlow: 1e-3 }] },
});

describe('a smaller gap', () => {
  const leak = 'past the shut admission spool';

  it('is that of the largest leak, and of what was made alike', () => {
    expect(values(closerFit(engine, leaking(leak)))).toEqual([
      'ground / lapped | ground / lapped',
      'lapped / lapped | lapped / lapped',
    ]);
    expect(values(closerFit(engine, leaking('past the piston')))).toEqual(['8 um', '6 um']);
    const apart = engineOf({ 'valve_gear.admission.clearance': '60 um' });
    expect(values(closerFit(apart, leaking(leak)))).toEqual(['40 um', '30 um', '20 um', '15 um']);
    const together = engineOf({
      'valve_gear.admission.clearance': '0.06 mm',
      'valve_gear.exhaust.clearance': '0.06 mm',
    });
    expect(values(closerFit(together, leaking(leak)))?.[0]).toBe('0.04 mm | 0.04 mm');
  });

  it('is a closer fit where the play is given as one', () => {
    const fitted = engineOf({ 'valve_gear.admission.clearance': 'H7/e8' });
    expect(values(closerFit(fitted, leaking(leak)))).toEqual(['H7/f8', 'H7/g8']);
  });

  it('is found for an engine that has not come to rest', () => {
    expect(closerFit(engineOf({ 'leaks.0.clearance': '90 um' }), notSettledResult)).toMatchObject({
      what: 'a smaller gap at the largest leak, “past the piston”',
    });
  });

  it('is none where no value makes the leak', () => {
    expect(closerFit(engine, leaking('through the wall'))).toBeUndefined();
  });
});

describe('more supply pressure', () => {
  it('is never more than what holds it is rated for', () => {
    const rated = (pressure: string): Remedy | undefined =>
      morePressure(engineOf({ 'supply.rated_pressure': pressure }), noStartResult);
    expect(rated('10 bar gauge')).toMatchObject({
      rungs: [[{ then: '4 bar gauge' }], [{ then: '6 bar gauge' }]],
    });
    expect(rated('10 bar gauge')?.proviso).toBeUndefined();
    expect(values(rated('4 bar gauge'))).toEqual(['4 bar gauge']);
    expect(values(rated('3.9 bar gauge'))).toEqual([]);
  });

  it('says so where no rating is known, and is no more than the compressor keeps', () => {
    expect(morePressure(engine, noStartResult)?.proviso).toMatch(
      /must bear it; the scenario gives no rated/u,
    );
    const weak = engineOf({ 'compressor.cut_in': '5 bar gauge' });
    expect(values(morePressure(weak, noStartResult))).toEqual(['4 bar gauge']);
  });
});

describe('a wider hose', () => {
  const starved: RunResult = {
    ...noStartResult,
    standStill: { ...noStartResult.standStill!, chestPressure: noStartResult.engine.atmosphericPressure },
  };

  it('goes with wider fittings, where the chest is starved', () => {
    expect(values(widerHose(engine, starved))).toEqual(['11 mm', '16 mm']);
    const fitted = engineOf({ 'supply.hose.fitting_bore': '6 mm' });
    expect(values(widerHose(fitted, starved))).toEqual(['11 mm | 8 mm', '16 mm | 12 mm']);
    expect(widerHose(fitted, starved)?.what).toBe('a wider hose with wider fittings');
  });

  it('is none where the pressure stands in the chest', () => {
    const full = { ...starved.standStill!, chestPressure: starved.engine.supplyPressure };
    expect(widerHose(engine, { ...starved, standStill: full })).toBeUndefined();
  });
});

test('a lighter load, by its formula or its torque', () => {
  expect(values(lighterLoad(engine, noStartResult))).toEqual([
    '0.75*(1.1 + 0.0025*rpm)',
    '0.5*(1.1 + 0.0025*rpm)',
  ]);
  const fan = engineOf({ 'load.kind': 'fan', 'load.torque': '2 N m', 'load.at_speed': '300 rpm' });
  expect(values(lighterLoad(fan, noStartResult))).toEqual(['1.5 N m', '1 N m']);
  const idle = engineOf({ 'load.kind': 'constant', 'load.torque': '0 N m' });
  expect(values(lighterLoad(idle, noStartResult))).toEqual([]);
});

test('half of all friction, that of the gear too', () => {
  expect(lessDrag(engine, noStartResult)?.rungs.map((rung) => rung.map(({ path }) => path))).toEqual([
    [
      'friction.running_torque',
      'friction.breakaway_torque',
      'friction.viscous_torque',
      'friction.piston_force',
      'friction.piston_force_per_pressure',
      'valve_gear.drive_torque',
    ],
  ]);
});

test('a later cut-off, where the scenario says it', () => {
  expect(values(laterCutOff(engine, noStartResult))).toEqual(['60 % of stroke']);
  expect(laterCutOff(engineOf({}, 'cask-hoist-slide-valve'), noStartResult)).toBeUndefined();
});

test('a heavier flywheel', () => {
  expect(values(heavierFlywheel(engine, noStartResult))).toEqual(['40 mm']);
});

test('a longer look, only where the time was over', () => {
  const timeOver: RunResult = { ...notSettledResult, outcome: { ...notSettledResult.outcome, time: 120 } };
  expect(longerLook(engine, timeOver)).toMatchObject({
    rungs: [[{ now: '120 s', then: '360 s' }], [{ then: '1200 s' }]],
  });
  expect(values(longerLook(engineOf({ 'run.longest_time': '30 min' }), timeOver))).toBeUndefined();
  const long = { ...timeOver, outcome: { ...timeOver.outcome, time: 1800 } };
  expect(values(longerLook(engineOf({ 'run.longest_time': '30 min' }), long))).toEqual(['3600 s']);
  expect(longerLook(engine, noStartResult)).toBeUndefined();
});

describe('what the start map tells', () => {
  /** Every 30°; from those in the list it starts unaided, from the others with a push [rad/s]. */
  const mapped = (unaided: readonly number[], push?: number): RunResult => {
    const positions = Array.from({ length: 12 }, (_, i): StartPosition => {
      const startsUnaided = unaided.includes(30 * i);
      return {
        crankAngle: 30 * i * DEGREE,
        startsUnaided,
        ...(startsUnaided ? { push: 0 } : push === undefined ? {} : { push }),
      };
    });
    const drive = { startMap: { positions, unaidedShare: unaided.length / 12 } } as unknown as Drive;
    return { ...noStartResult, drive };
  };

  it('is another starting position, in the middle of the widest stretch', () => {
    expect(startingPosition(engine, mapped([330, 0, 30, 180]))).toMatchObject({
      rungs: [[{ path: 'start.crank_angle', now: '40 deg', then: '0 deg' }]],
    });
    expect(values(startingPosition(engine, mapped([60, 90, 120, 300])))).toEqual(['90 deg']);
    expect(startingPosition(engine, mapped([]))).toBeUndefined();
    expect(startingPosition(engine, noStartResult)).toBeUndefined();
  });

  it('is a push by hand, none harder than there is', () => {
    expect(pushByHand(engine, mapped([], 42 * RPM))).toMatchObject({
      rungs: [[{ path: 'start.hand_speed', now: '0 rpm', then: '50 rpm' }], [{ then: '70 rpm' }]],
    });
    expect(values(pushByHand(engine, mapped([], 101 * RPM)))).toEqual(['110 rpm']);
    expect(values(pushByHand(engine, mapped([], 130 * RPM)))).toEqual([]);
    expect(pushByHand(engine, mapped([]))).toBeUndefined();
    expect(pushByHand(engine, mapped([30, 60]))).toBeUndefined();
  });
});

test.each(['cider-press-disc', 'hay-winch-twin', 'launch-pump-double-acting', 'gate-opener-electric'])(
  'every remedy of %s changes what it names, at every rung',
  (name) => {
    const own = engineOf({}, name);
    const settings = remedyRules.flatMap((rule) => rule(own, noStartResult)?.rungs.flat() ?? []);
    expect(settings.length).toBeGreaterThan(6);
    const given = new Map(own.given.map(({ path, text }) => [path, text]));
    for (const { path, now, then } of settings) {
      expect(then).not.toBe(now);
      expect(now).toBe(given.get(path) ?? now);
    }
  },
);
