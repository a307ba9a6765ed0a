/**
 * Whatever engine passes the checks gives a named outcome, finite numbers and ledgers that close.
 *
 * TICKOVER_CASES sets how many engines are tried: each of them over its first turn, and of others one to every
 * twenty in a whole run, plausible ones and some with values far off. Each may spend a bounded number of integrator steps: the integrator is given the rest
 * of that budget as its step limit.
 */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { Journey } from '../../src/numerics/integrator.ts';
import type { RunResult } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { engineStepper, QUICK } from '../../src/run/stepper.ts';
import { ledgerResiduals } from '../../src/model/ledger.ts';
import { nextMilestone, type Milestone } from '../../src/run/motion.ts';
import { arbitraryEngine } from '../support/arbitrary-engine.ts';
import { motionOf, systemOf } from '../support/drive.ts';
import { nonFinite } from '../support/non-finite.ts';

const CASES = Number(process.env['TICKOVER_CASES'] ?? 300);
const WHOLE_RUNS = Math.ceil(CASES / 20);
const LIMIT = 1e-6;

/**
 * First turns are taken with the quick accuracy: errors of 3e-4 a step in the energy, and one that bounces on its air
 * exchanges many times what counts on balance. In mass there are none.
 */
const QUICK_ENERGY = 1e-2;
const QUICK_MASS = 1e-9;

/** Integrator steps that one engine may spend. */
const budget = vi.hoisted(() => ({ steps: 0 }));
const FIRST_TURN_STEPS = 500;
const WHOLE_RUN_STEPS = 6000;

vi.mock(import('../../src/run/stepper.ts'), async (original) => {
  const module = await original();
  return {
    ...module,
    engineStepper: (system, accuracy) => {
      const stepper = module.engineStepper(system, accuracy);
      const within = (journey: Journey): Journey => ({
        ...journey,
        stepLimit: Math.max(1, budget.steps - stepper.counters.acceptedSteps),
      });
      return {
        ...stepper,
        inAngle: (y, toAngle, journey) => stepper.inAngle(y, toAngle, within(journey)),
        inTime: (direction, y, toTime, journey) => stepper.inTime(direction, y, toTime, within(journey)),
      };
    },
  };
});

const inUnit = (share: number): boolean => share >= 0 && share <= 1;

function faultsOf({ outcome, ledger, settled, trace, ...rest }: RunResult): string[] {
  const faults = nonFinite({ outcome, ledger, settled, trace, ...rest }).map(
    (path) => `${path} is not finite`,
  );
  if (!(ledger.mass < LIMIT)) faults.push(`mass does not add up: ${ledger.mass}`);
  if (!(ledger.energy < LIMIT)) faults.push(`energy does not add up: ${ledger.energy}`);
  if (outcome.kind === 'non-finite') faults.push(outcome.reason);
  if ((settled === undefined) === (outcome.kind === 'settled'))
    faults.push('settled without a cycle, or not');
  if (settled) {
    const { workedShare, leakShare, blowThroughShare, clearanceShare, leaks } = settled.air;
    const shares = [workedShare, leakShare, blowThroughShare, clearanceShare];
    const sum = shares.reduce((a, b) => a + b);
    if (![...shares, ...leaks.map(({ share }) => share)].every(inUnit)) faults.push('a share outside 0 to 1');
    if (Math.abs(sum - 1) > 1e-12) faults.push(`the shares of the air add up to ${sum}`);
  }
  return faults;
}

const kinds: string[] = [];

function runFaults(spec: EngineSpec): string[] {
  budget.steps = WHOLE_RUN_STEPS;
  const result = runEngine(spec);
  kinds.push(result.outcome.kind);
  return faultsOf(result);
}

const ends: Milestone['kind'][] = [];

/** From a push at its start to the next top dead centre, or to wherever it gets. */
function firstTurnFaults(spec: EngineSpec): string[] {
  budget.steps = FIRST_TURN_STEPS;
  const system = systemOf(spec);
  const speed = Math.max(20, spec.start.hand_speed);
  const start = { angle: spec.start.crank_angle, speed, longestTime: 0.5 };
  const motion = motionOf(system, start, engineStepper(system, QUICK));
  const before = motion.y.slice();
  const end = nextMilestone(motion);
  ends.push(end.kind);
  const { acceptedSteps } = motion.stepper.counters;
  const { mass, energy } = ledgerResiduals(system, before, motion.y, acceptedSteps);
  const { slots } = system;
  const faults = [...motion.y].flatMap((value, slot) =>
    Number.isFinite(value) ? [] : [`slot ${slot}: ${value}`],
  );
  if (!(mass < QUICK_MASS)) faults.push(`mass does not add up: ${mass}`);
  if (!(energy < QUICK_ENERGY)) faults.push(`energy does not add up: ${energy}`);
  if (end.kind === 'non-finite') faults.push(`slot ${end.component} left the possible range`);
  if (motion.y.slice(slots.mass(0), slots.firstTotal).some((amount) => amount <= 0))
    faults.push('an empty volume');
  return faults;
}

const patience = 1000 * CASES + 60_000;

describe('random engines', () => {
  it(
    'keep the laws over their first turn',
    () => {
      const keeps = fc.property(arbitraryEngine({ longestTime: 1, strays: 1 }), (spec) => {
        expect(firstTurnFaults(spec)).toEqual([]);
      });
      fc.assert(keeps, { numRuns: CASES, seed: 41, endOnFailure: true });
    },
    patience,
  );

  it(
    'of plausible proportions keep the laws in a whole run',
    () => {
      const keeps = fc.property(arbitraryEngine({ longestTime: 10, strays: 0 }), (spec) => {
        expect(runFaults(spec)).toEqual([]);
      });
      fc.assert(keeps, { numRuns: WHOLE_RUNS, seed: 17, endOnFailure: true });
    },
    patience,
  );

  it(
    'with some values anywhere in their range keep the laws in a whole run',
    () => {
      const keeps = fc.property(arbitraryEngine({ longestTime: 2, strays: 3 }), (spec) => {
        expect(runFaults(spec)).toEqual([]);
      });
      fc.assert(keeps, { numRuns: WHOLE_RUNS, seed: 29, endOnFailure: true });
    },
    patience,
  );

  it('come to very different ends', () => {
    const shareOf = (all: readonly string[], kind: string): number =>
      all.filter((one) => one === kind).length / all.length;
    expect(shareOf(kinds, 'settled')).toBeGreaterThan(0.05);
    expect(shareOf(kinds, 'no-start')).toBeGreaterThan(0.1);
    expect(shareOf(kinds, 'step-limit')).toBeLessThan(0.5);
    expect(shareOf(ends, 'turn')).toBeGreaterThan(0.3);
    expect(shareOf(ends, 'step-limit')).toBeLessThan(0.15);
  });
});
