/**
 * Any engine that passes the checks, from all over the declared ranges, gets a named outcome and finite numbers in a bounded
 * number of derivative calls; the books of a settled turn close; and few are given up.
 *
 * TICKOVER_ENGINES sets how many are tried, TICKOVER_FIRST_ENGINE where the numbers begin.
 */
import { describe, expect, it } from 'vitest';
import { settledRunning } from '../../src/run/settled-running.ts';
import { runEngine } from '../../src/run/run-engine.ts';
import { anyEngine } from '../support/any-engine.ts';
import { nonFinite } from '../support/non-finite.ts';

const ENGINES = Number(process.env['TICKOVER_ENGINES'] ?? 30);
const FIRST = Number(process.env['TICKOVER_FIRST_ENGINE'] ?? 1);

/** Whole runs cost some twenty quick answers. */
const WHOLE_RUN_EVERY = 12;

/** Derivative calls of a quick answer; the settled engine that is hardest to follow needs a tenth. */
const MOST_CALLS = 3_000_000;
const LEDGER = 1e-6;

/** Share of engines that may be given up for want of steps. */
const GIVEN_UP = 0.005;

const numbers = Array.from({ length: ENGINES }, (_, i) => FIRST + i);
const isGivenUp = (kind: string): boolean => kind === 'step-limit' || kind === 'non-finite';

describe('any engine', () => {
  it('has a quick answer', () => {
    const faults: string[] = [];
    const kinds = new Map<string, number>();
    let [most, givenUp] = [0, 0];
    for (const number of numbers) {
      try {
        const answer = settledRunning(anyEngine(number));
        const { kind } = answer.outcome;
        kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
        if (isGivenUp(kind)) {
          givenUp += 1;
          console.log(`engine ${number} is given up: ${answer.outcome.reason}`);
        }
        faults.push(...nonFinite(answer).map((path) => `engine ${number}: ${path} is not finite`));
        const { derivativeCalls } = answer.counters;
        most = Math.max(most, derivativeCalls);
        if (derivativeCalls > MOST_CALLS) faults.push(`engine ${number} took ${derivativeCalls} calls`);
      } catch (error) {
        faults.push(`engine ${number} threw: ${String(error)}`);
      }
    }
    console.log(JSON.stringify(Object.fromEntries(kinds)), `most calls ${most}`);
    expect(faults).toEqual([]);
    expect(givenUp).toBeLessThanOrEqual(GIVEN_UP * numbers.length);
  }, 3_600_000);

  // 35: four cylinders of 3 cm³ behind a port of 224 cm². 95: rotating parts of 0.2 mg m² drive 600 kg of pistons.
  it.each([35, 95])('that is beyond the method says so: number %i', (number) => {
    const { outcome } = settledRunning(anyEngine(number));
    expect(outcome.kind).toBe('step-limit');
    expect(outcome.reason).toContain('that is a limit of this program');
  });

  it('has a whole run whose books close', () => {
    const faults: string[] = [];
    let worst = 0;
    for (const number of numbers.filter((one) => one % WHOLE_RUN_EVERY === 0)) {
      const result = runEngine(anyEngine(number));
      const { ledger, outcome } = result;
      const residual = Math.max(ledger.mass, ledger.energy);
      if (isGivenUp(outcome.kind)) console.log(`run of engine ${number} is given up: ${outcome.reason}`);
      else if (!(residual < LEDGER)) faults.push(`engine ${number}: residual ${residual}`);
      else worst = Math.max(worst, residual);
      faults.push(...nonFinite(result).map((path) => `engine ${number}: ${path} is not finite`));
    }
    console.log(`largest residual ${worst}`);
    expect(faults).toEqual([]);
  }, 3_600_000);
});
