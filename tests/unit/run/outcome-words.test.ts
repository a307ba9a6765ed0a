/** Outcomes in sentences that a builder can read. */
import { describe, expect, it } from 'vitest';
import { SLOT } from '../../../src/model/slots.ts';
import type { Milestone, Motion } from '../../../src/run/motion.ts';
import { outcomeOf } from '../../../src/run/outcome-words.ts';
import { motionOf, systemOf } from '../../support/drive.ts';
import { constantLoad, DEGREE, referenceSpec, RPM } from '../../support/reference-engine.ts';

const system = systemOf(referenceSpec({ load: constantLoad(3) }));

/** A motion that began at 40° and has got to some place, time and speed. */
function motionAt(degrees: number, speed = 0, time = 12, longestTime = 60): Motion {
  const motion = motionOf(system, { angle: 40 * DEGREE, speed: 0, longestTime });
  motion.y[SLOT.crankAngle] = degrees * DEGREE;
  motion.y[SLOT.speed] = speed;
  motion.y[SLOT.time] = time;
  return motion;
}

describe('the kind of outcome', () => {
  it.each<[Milestone['kind'], number, string]>([
    ['rest', 40, 'no-start'],
    ['rest', 399, 'no-start'],
    ['rest', 401, 'stalled'],
    ['creeps', 80, 'no-start'],
    ['creeps', 500, 'stalled'],
    ['backwards', -1100, 'runs-backwards'],
    ['time over', 80, 'no-start'],
    ['time over', 900, 'stalled'],
    ['step-limit', 80, 'step-limit'],
  ])('of %s at %i° is right', (kind, degrees, expected) => {
    const outcome = outcomeOf(motionAt(degrees), { kind } as Milestone);
    expect(outcome.kind).toBe(expected);
    expect(outcome.reason).toMatch(/^It |^The |^After /);
    expect(outcome.reason.endsWith('.')).toBe(true);
  });

  it('of an engine that still turns when the time is over is not settled', () => {
    expect(outcomeOf(motionAt(4000, 20), { kind: 'time over' })).toMatchObject({
      kind: 'not-settled',
      turns: 11,
    });
  });

  it('of a number that is none says that it is our limit', () => {
    const outcome = outcomeOf(motionAt(80), { kind: 'non-finite', component: 3 });
    expect(outcome.kind).toBe('non-finite');
    expect(outcome.reason).toContain('a limit of this program');
  });
});

describe('an outcome', () => {
  it('says when and where, within one turn, and how many turns', () => {
    const { time, crankAngle, turns } = outcomeOf(motionAt(40 + 2 * 360 + 90), { kind: 'rest' });
    expect({ time, turns }).toEqual({ time: 12, turns: 2 });
    expect(crankAngle / DEGREE).toBeCloseTo(130, 9);
  });

  it('of an engine that rolled back counts no turns', () => {
    expect(outcomeOf(motionAt(30), { kind: 'rest' }).turns).toBe(0);
  });

  it('of an engine at rest says what is missing', () => {
    const { missingTorque, reason } = outcomeOf(motionAt(40), { kind: 'rest' });
    // Break-away 0.25, gear 0.06, load 3, and the piston's 6 N on its lever; room air pushes neither way.
    expect(missingTorque).toBeGreaterThan(3.31);
    expect(missingTorque).toBeLessThan(3.31 + 6 * 0.03);
    expect(reason).toMatch(/^It stays at 40°/);
    expect(reason).toContain(missingTorque!.toPrecision(3));
  });

  it('of an engine that moved says from where to where', () => {
    expect(outcomeOf(motionAt(120), { kind: 'rest' }).reason).toMatch(
      /^It moves off from 40° and comes to rest at 120°/,
    );
  });

  it.each([3, 47.2, 294, 1234, 12_000])('of %f rpm is said in plain digits', (rpm) => {
    const { reason } = outcomeOf(motionAt(360, 5), { kind: 'settled' }, rpm * RPM);
    const said = Number(/at ([\d.]+) rpm/.exec(reason)?.[1]);
    expect(Math.abs(said / rpm - 1)).toBeLessThan(0.006);
  });

  it('of a long run says its time in plain digits', () => {
    const { reason } = outcomeOf(motionAt(9000, 5, 3600, 3600), { kind: 'time over' });
    expect(reason).toMatch(/^After 3600 s /);
  });

  it('just short of a turn does not say 360°', () => {
    expect(outcomeOf(motionAt(359.8), { kind: 'rest' }).reason).toMatch(/comes to rest at 0°/);
  });
});
