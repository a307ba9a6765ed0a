/**
 * Whatever engine passes the checks gives a named outcome, finite numbers and ledgers that close.
 *
 * TICKOVER_CASES sets how many engines are tried. Each may spend a bounded number of integrator steps: the integrator is
 * given the rest of that budget as its step limit.
 */
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import type { Journey } from '../../src/numerics/integrator.ts';
import type { RunResult } from '../../src/run/result.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { arbitraryEngine } from '../support/arbitrary-engine.ts';
import { nonFinite } from '../support/non-finite.ts';

const CASES = Number(process.env['TICKOVER_CASES'] ?? 60);
const STEP_BUDGET = 15_000;
const LIMIT = 1e-6;

vi.mock(import('../../src/run/stepper.ts'), async (original) => {
  const module = await original();
  return {
    ...module,
    engineStepper: (system, accuracy) => {
      const stepper = module.engineStepper(system, accuracy);
      const within = (journey: Journey): Journey => ({
        ...journey,
        stepLimit: Math.max(1, STEP_BUDGET - stepper.counters.acceptedSteps),
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
  const result = runEngine(spec);
  kinds.push(result.outcome.kind);
  return faultsOf(result);
}

describe('random engines', () => {
  it(
    'of plausible proportions keep the laws',
    () => {
      const engines = arbitraryEngine({ longestTime: 15, strays: 0 });
      const keeps = fc.property(engines, (spec) => {
        expect(runFaults(spec)).toEqual([]);
      });
      fc.assert(keeps, { numRuns: Math.ceil(CASES / 2), seed: 17, endOnFailure: true });
    },
    1000 * CASES + 20_000,
  );

  it(
    'with some values anywhere in their range keep the laws',
    () => {
      const engines = arbitraryEngine({ longestTime: 3, strays: 3 });
      const keeps = fc.property(engines, (spec) => {
        expect(runFaults(spec)).toEqual([]);
      });
      fc.assert(keeps, { numRuns: Math.floor(CASES / 2), seed: 29, endOnFailure: true });
    },
    1000 * CASES + 20_000,
  );

  it('come to very different ends', () => {
    const share = (kind: string): number => kinds.filter((one) => one === kind).length / kinds.length;
    expect(share('settled')).toBeGreaterThan(0.05);
    expect(share('no-start')).toBeGreaterThan(0.1);
    expect(share('step-limit')).toBeLessThan(0.4);
  });
});
