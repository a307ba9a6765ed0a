/** What became of changes that were tried on an engine that does not run, word by word. */
import { describe, expect, it } from 'vitest';
import type { TriedChange, Trials } from '../../../src/run/trials.ts';
import { verdictOf } from '../../../src/verdict/verdict.ts';
import { noStartResult, triedResult } from '../report/synthetic-result.ts';

const RPM = Math.PI / 30;

const closer: TriedChange = {
  what: 'a smaller gap',
  settings: [{ path: 'valve_gear.face_gap', now: '180 um', then: '60 um' }],
};
const friction: TriedChange = {
  what: 'half of all friction',
  settings: ['a', 'b', 'c'].map((key) => ({ path: `friction.${key}`, now: '2 N', then: '1 N' })),
};
const start: TriedChange = {
  what: 'another starting position',
  settings: [{ path: 'start.crank_angle', now: '200 deg', then: '35 deg' }],
};

const answer = { speed: 289 * RPM, brakePower: 55.3 };
const said = (trials: Trials, units: 'metric' | 'imperial' = 'metric'): string =>
  verdictOf({ ...noStartResult, trials }, units).nextChange;
const advice = verdictOf(noStartResult).nextChange;

describe('one change with which it runs', () => {
  const running = { changes: [closer], answer: { ...answer, unaidedShare: 0.125 } } as const;
  const text =
    'Try a smaller gap, with valve_gear.face_gap at 60 um instead of 180 um: it then starts from the position set, ' +
    'settles at 289 rpm with 55.3 W into the load, and starts by itself from 13 % of the turn';

  it('is advised with what it brings', () => {
    expect(said({ running, unaidedShareNow: 0.04, inVain: [] })).toBe(`${text} (now from 4.0 %).`);
    expect(said({ running, inVain: [] })).toBe(`${text}.`);
  });

  it('is told apart from one that is not enough, and with what it presupposes', () => {
    const notEnough = [{ path: 'valve_gear.face_gap', now: '180 um', then: '90 um' }];
    const changes = [{ ...closer, proviso: 'The plates must be flat.' }] as const;
    expect(said({ running: { ...running, changes, notEnough }, inVain: [] })).toBe(
      `${text}. The plates must be flat. 90 um would not be enough.`,
    );
  });

  it('does not name many values one by one', () => {
    const changes = [friction] as const;
    expect(said({ running: { ...running, changes, notEnough: friction.settings }, inVain: [] })).toMatch(
      /^Try half of all friction: it then starts .* Less of it would not be enough\.$/u,
    );
  });

  it('has nothing to say about where it starts if only the start is another', () => {
    expect(said({ running: { changes: [start], answer }, unaidedShareNow: 0.4, inVain: [] })).toBe(
      'Try another starting position, with start.crank_angle at 35 deg instead of 200 deg: it then settles at 289 rpm ' +
        'with 55.3 W into the load.',
    );
  });

  it('has no load to speak of where there is none', () => {
    const idle = { ...answer, brakePower: 0 };
    expect(said({ running: { changes: [start], answer: idle }, inVain: [] })).toMatch(
      /it then settles at 289 rpm with no load to drive\.$/u,
    );
  });
});

const together =
  'Try two changes together: more supply pressure, with supply.pressure at 60 psi gauge instead of 45 psi gauge; and a ' +
  'lighter load, with load.torque at 1.5 lbf ft instead of 2 lbf ft. It then starts from the position set, settles at 300 rpm ' +
  'with 55.3 W into the load, and starts by itself from 13 % of the turn (now from 0.0 %). The compressor keeps up, ' +
  'running 64 % of the time. The hose must bear it. Neither makes it run alone. With the first alone, turned slowly, it ';

it('two changes together, and how far the first gets alone', () => {
  expect(verdictOf(triedResult).nextChange).toBe(
    `${together}brings the shaft 0.900 N·m (now 0.350 N·m), and the load takes 1.15 N·m.`,
  );
  expect(verdictOf(triedResult, 'imperial').nextChange).toBe(
    `${together}brings the shaft 0.664 lbf·ft (now 0.258 lbf·ft), and the load takes 0.848 lbf·ft.`,
  );
});

describe('changes in vain', () => {
  const now = { torque: 0.35, load: 1.15 };

  it('follow the advice that needs no trial', () => {
    expect(
      said({
        slowTurnNow: now,
        inVain: [
          { change: closer, slowTurn: { torque: 1.54, load: 1.15 } },
          { change: friction, slowTurn: now },
        ],
      }),
    ).toBe(
      `${advice} Tried with a smaller gap and half of all friction, it does not run either, nor with the two of them that ` +
        'come nearest together. Nearest comes a smaller gap, with valve_gear.face_gap at 60 um instead of 180 um: turned ' +
        'slowly, it brings the shaft 1.54 N·m (now 0.350 N·m), and the load takes 1.15 N·m; yet it does not get round ' +
        'from the position set.',
    );
  });

  it('may leave it to be driven', () => {
    expect(
      said({
        slowTurnNow: { torque: -15.6, load: 2 },
        inVain: [{ change: friction, slowTurn: { torque: -5.03, load: 1 } }],
      }),
    ).toBe(
      `${advice} Tried with half of all friction, it does not run either. Nearest comes half of all friction: turned slowly, ` +
        'it has to be driven with 5.03 N·m (now 15.6 N·m), and the load takes 1.00 N·m (now 2.00 N·m).',
    );
  });

  it.each([
    ['brings it no nearer', { torque: 0.3, load: 1.15 }],
    ['cannot be turned slowly', undefined],
  ])('of which none is near where it %s', (_how, slowTurn) => {
    const inVain = [{ change: start, ...(slowTurn ? { slowTurn } : {}) }];
    expect(said({ slowTurnNow: now, inVain })).toBe(
      `${advice} Tried with another starting position, it does not run either.`,
    );
  });

  it('are not spoken of where there are none', () => {
    expect(said({ inVain: [] })).toBe(advice);
  });
});
