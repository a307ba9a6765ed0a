import { describe, expect, test } from 'vitest';
import type { OutcomeKind } from '../../../src/run/outcome.ts';
import type { AirLedger, CycleProfile, RunResult } from '../../../src/run/result.ts';
import { verdictOf } from '../../../src/verdict/verdict.ts';
import {
  doubleActingResult,
  noStartResult,
  notSettledResult,
  saggingResult,
  settledResult,
  stalledResult,
} from '../report/synthetic-result.ts';

const deg = Math.PI / 180;
const cycle = settledResult.settled!;

/** The settled result with parts of its cycle replaced, and with the air all used up before release. */
function running(changes: Partial<typeof cycle>, engine: Partial<RunResult['engine']> = {}): RunResult {
  return {
    ...settledResult,
    settled: { ...cycle, ...changes },
    engine: { ...settledResult.engine, ...engine },
  };
}

const withAir = (air: Partial<AirLedger>): RunResult => running({ air: { ...cycle.air, ...air } });

describe('headline', () => {
  test.each<[string, RunResult, string]>([
    [
      'runs',
      settledResult,
      'It runs and settles at 315 rpm, with 82.5 W into the load. The compressor keeps up, running 64 % of the time.',
    ],
    [
      'runs on too small a compressor',
      saggingResult,
      'It runs and settles at 315 rpm, with 82.5 W into the load. ' +
        'The compressor does not keep up: a full receiver lasts 3.4 minutes.',
    ],
    [
      'does not start',
      noStartResult,
      'It does not start: the crank comes to rest 171° after top dead centre, 0.420 N·m short of the torque to move on.',
    ],
    [
      'stalls',
      stalledResult,
      'It stops: after 9 turns it comes to rest 338° after top dead centre, 0.110 N·m short of the torque to move on.',
    ],
    [
      'has not settled',
      notSettledResult,
      'It turns, but has not settled: after 5.00 s it is doing 275 rpm and still changing.',
    ],
  ])('of an engine that %s', (_name, result, headline) => {
    expect(verdictOf(result).headline).toBe(headline);
  });

  test('without a compressor and without a load', () => {
    const { compressor: _compressor, ...alone } = running({ brakePower: 0 });
    expect(verdictOf(alone).headline).toBe('It runs and settles at 315 rpm, with no load to drive.');
  });

  test('names a duty above the rating', () => {
    const compressor = { ...settledResult.compressor!, duty: 0.8, dutyRating: 0.5 };
    expect(verdictOf({ ...settledResult, compressor }).headline).toContain(
      'keeps up only by running 80 % of the time, above its rating of 50 %',
    );
  });
});

test.each<OutcomeKind>(['runs-backwards', 'step-limit', 'non-finite', 'no-start', 'stalled', 'not-settled'])(
  'the outcome %s has a headline, its reason and something to try',
  (kind) => {
    const verdict = verdictOf({ ...noStartResult, outcome: { ...noStartResult.outcome, kind } });
    expect(verdict.headline).toMatch(/^(It|No answer).*\.$/u);
    expect(verdict.statements).toContain(noStartResult.outcome.reason);
    expect(verdict.nextChange).toMatch(/^(Try|Check) .*\.$/u);
  },
);

describe('an engine that is to run in reverse', () => {
  const inReverse = (result: RunResult, gearServes: boolean): RunResult => ({
    ...result,
    engine: { ...result.engine, reverse: { gearServes } },
  });

  test('is said to, and what its gear does there', () => {
    const { headline, statements } = verdictOf(inReverse(settledResult, true));
    expect(headline).toMatch(/^It runs in reverse and settles at 315 rpm/u);
    expect(statements[0]).toMatch(/valve gear is set for it\. All crank angles count that way round\.$/u);
    expect(verdictOf(settledResult).statements[0]).not.toContain('reverse');
  });

  test('is told to set the gear over, when that is what it lacks', () => {
    const left = verdictOf(inReverse(noStartResult, false));
    expect(left.headline).toMatch(/^It does not start in reverse/u);
    expect(left.statements[0]).toContain('left as it is');
    expect(left.nextChange).toMatch(/^Try a valve gear that can be set over for reverse: a slip eccentric/u);
    const setOver = verdictOf(inReverse(noStartResult, true));
    expect(setOver.nextChange).toBe(verdictOf(noStartResult).nextChange);
  });

  test('is named to an engine that turns backwards', () => {
    const backwards = {
      ...noStartResult,
      outcome: { ...noStartResult.outcome, kind: 'runs-backwards' as const },
    };
    expect(verdictOf(backwards).nextChange).toContain('`running_direction: reverse`');
    expect(verdictOf(inReverse(backwards, true)).nextChange).not.toContain('running_direction');
    expect(verdictOf(inReverse(backwards, true)).headline).toBe('It runs, but forward and not in reverse.');
  });
});

describe('next change', () => {
  const quiet = {
    workedShare: 1,
    leakShare: 0,
    blowThroughShare: 0,
    clearanceShare: 0,
    leaks: [],
  };

  test('late cut-off, when the air leaves under pressure', () => {
    expect(verdictOf(settledResult).nextChange).toMatch(
      /^Try an earlier cut-off: the air is still at 1\.61 bar gauge.*with a cut-off a tenth earlier it would take [\d.]+ % less air for its work and do [\d.]+ % less work a turn\.$/u,
    );
  });

  test.each<[string, Partial<AirLedger>, RegExp]>([
    [
      'largest leak',
      {
        leaks: [
          { name: 'a', share: 0.1 },
          { name: 'b', share: 0.6 },
        ],
      },
      /largest leak, “b”: 60 %/u,
    ],
    ['blow-through', { blowThroughShare: 0.7 }, /exhaust is shut before the admission opens: 70 %/u],
    [
      'clearance',
      { clearanceShare: 0.7 },
      /smaller clearance volume.*: 70 %.*with a fifth less of it it would take [\d.]+ % less air/u,
    ],
  ])('%s, when it is the largest loss', (_name, air, text) => {
    expect(verdictOf(withAir({ ...quiet, ...air })).nextChange).toMatch(text);
  });

  test('a compressor that keeps up without a rest says how that can be', () => {
    const compressor = { ...saggingResult.compressor!, keepsUp: true };
    const { minutesUntilSag: _never, ...settling } = compressor;
    const { statements } = verdictOf({ ...saggingResult, compressor: settling });
    expect(statements.join(' ')).toContain('it never stops, and the receiver settles lower');
  });

  test('a larger compressor, only when no loss is as large as what is missing', () => {
    expect(verdictOf(saggingResult).nextChange).toMatch(
      /^Try a larger compressor.*the compressor would suffice for some [\d.]+ bar gauge\.$/u,
    );
    const leaky = withAir({ leaks: [{ name: 'past the piston', share: 0.7 }] });
    expect(verdictOf({ ...leaky, compressor: saggingResult.compressor! }).nextChange).toMatch(
      /“past the piston”/u,
    );
  });

  test('drag, when most of the work is lost in one place', () => {
    const work = { ...cycle.work, valveGear: 0.8 * cycle.work.indicated };
    expect(verdictOf(running({ work })).nextChange).toMatch(
      /^Try a thinner film.*80 % of the work.*Half of that saved is .* more for the load/u,
    );
    expect(verdictOf(running({ work: { ...work, load: 0 } })).nextChange).toMatch(
      /Half of that saved is [\d.]+ J a turn, which would make it turn faster\.$/u,
    );
  });

  test('the hose, when the chest starves', () => {
    const profile = { ...cycle.profile, chestPressure: cycle.profile.chestPressure.map(() => 2e5) };
    expect(verdictOf(running({ profile })).nextChange).toMatch(
      /^Try a wider or shorter hose.*3\.01 bar below/u,
    );
  });

  test('the largest leak before anything else, when an engine at rest starves on its leaks', () => {
    const leaky = {
      ...noStartResult.standStill!,
      chestPressure: 1.8e5,
      airFlowAnr: 4e-3,
      leaks: [
        { name: 'across the front face', massFlow: 3e-3 },
        { name: 'past the piston', massFlow: 1e-3 },
      ],
    };
    for (const result of [noStartResult, stalledResult]) {
      const { nextChange, statements } = verdictOf({ ...result, standStill: leaky });
      expect(nextChange).toMatch(/^Try to close the leak “across the front face” first.*240 L\/min ANR/u);
      expect(statements.at(-1)).toMatch(/^Standing there under air it loses 240 L\/min ANR/u);
      expect(verdictOf(result).nextChange).not.toMatch(/leak/u);
    }
  });

  test('the exhaust, when it holds the piston back', () => {
    const [end] = cycle.profile.ends;
    const pressure = end.pressure.map((p, i) => (i < 180 ? p : 4.5e5));
    expect(
      verdictOf(running({ profile: { ...cycle.profile, ends: [{ ...end, pressure }] } })).nextChange,
    ).toMatch(/^Try a larger exhaust port/u);
  });

  test('nothing, when nothing is lost', () => {
    const even = (value: number): Float64Array => cycle.profile.chestPressure.map(() => value);
    const { supplyPressure, atmosphericPressure } = settledResult.engine;
    const pressure = cycle.profile.crankAngle.map((angle) =>
      angle < 97 * deg ? supplyPressure : atmosphericPressure,
    );
    const [end] = cycle.profile.ends;
    const profile: CycleProfile = {
      ...cycle.profile,
      chestPressure: even(supplyPressure),
      ends: [{ ...end, pressure }],
    };
    const work = { ...cycle.work, bearings: 0, piston: 0, valveGear: 0 };
    expect(verdictOf(running({ profile, work, air: { mass: 1, ...quiet } })).nextChange).toMatch(
      /^No single loss/u,
    );
  });

  test('another starting position, when the engine was left with the admission shut', () => {
    const trace = {
      ...noStartResult.trace,
      crankAngle: noStartResult.trace.crankAngle.map((a) => a + 90 * deg),
    };
    expect(verdictOf({ ...noStartResult, trace }).nextChange).toBe(
      'Try another starting position: at 120° the admission is shut; it is open from 354° to 96°.',
    );
  });
});

describe('an engine with two working ends', () => {
  const ends = doubleActingResult.engine.ends;
  const atRest = (crankDegrees: number): RunResult => ({
    ...noStartResult,
    engine: { ...noStartResult.engine, ends },
    outcome: { ...noStartResult.outcome, crankAngle: crankDegrees * deg },
    trace: {
      ...noStartResult.trace,
      crankAngle: noStartResult.trace.crankAngle.map(() => crankDegrees * deg),
    },
  });

  test('says of either end when it is open, by the angle of the crank', () => {
    const { statements } = verdictOf(atRest(200));
    expect(statements).toContain(
      'At the cover end the admission is open from 354° to 96°, the exhaust from 158° to 318°; at 200° only the exhaust is open.',
    );
    expect(statements).toContain(
      'At the crank end the admission is open from 174° to 276°, the exhaust from 338° to 138°; at 200° only the admission is open.',
    );
  });

  test('does not blame the position while one of them has its admission open', () => {
    expect(verdictOf(atRest(200)).nextChange).not.toMatch(/another starting position/u);
    expect(verdictOf(atRest(150)).nextChange).toMatch(
      /at 150° the admission is shut; that of the cover end is open from 354° to 96°/u,
    );
  });
});

test('behind a regulator that droops, its inlet counts for safety and it is named with the hose', () => {
  const { settled, engine, ...rest } = doubleActingResult;
  const { receiver: _receiver, ...facts } = engine;
  const profile = { ...settled!.profile, chestPressure: settled!.profile.chestPressure.map(() => 2e5) };
  const air: AirLedger = { ...settled!.air, leaks: [] };
  const { cautions, nextChange } = verdictOf({
    ...rest,
    engine: facts,
    settled: { ...settled!, profile, air },
  });
  expect(cautions.find(({ topic }) => topic === 'Pressure parts')!.text).toContain(
    'rated for 9.00 bar gauge',
  );
  expect(nextChange).toMatch(/^Try a wider or shorter hose, or a regulator that passes more/u);
});

test('books that do not close are said to be no books', () => {
  const { statements } = verdictOf({ ...settledResult, ledger: { mass: 0.02, energy: 0 } });
  expect(statements.at(-1)).toBe(
    'The books do not close: 2.0 % of the air or energy is unaccounted for, so trust no figure here.',
  );
  expect(verdictOf(settledResult).statements.join()).not.toContain('books');
});

test('ANR is explained exactly once', () => {
  expect(
    verdictOf(settledResult)
      .statements.join(' ')
      .match(/ISO 8778/gu),
  ).toHaveLength(1);
});
