/**
 * Engines that once threw, did not come to an end, or did not close their books, each found by random search over the
 * declared ranges: they keep to a named outcome, finite numbers and closed books.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runEngine } from '../../src/run/run-engine.ts';
import { settledRunning } from '../../src/run/settled-running.ts';
import { readScenario } from '../../src/scenario/read-scenario.ts';
import { nonFinite } from '../support/non-finite.ts';

const folder = fileURLToPath(new URL('hard-engines', import.meta.url));

describe.each(readdirSync(folder))('%s', (name) => {
  const reading = readScenario(readFileSync(join(folder, name), 'utf8'), name);
  if (!reading.ok) throw new Error(`${name} is no scenario`);
  const { spec } = reading;

  it('has a quick answer', () => {
    const answer = settledRunning(spec);
    expect(nonFinite(answer)).toEqual([]);
    expect(answer.outcome.kind).not.toBe('non-finite');
    expect(answer.outcome.kind).not.toBe('step-limit');
  });

  it('has a whole run whose books close', () => {
    const result = runEngine(spec);
    expect(nonFinite(result)).toEqual([]);
    expect(result.outcome.kind).not.toBe('non-finite');
    expect(Math.max(result.ledger.mass, result.ledger.energy)).toBeLessThan(1e-6);
  });
});
