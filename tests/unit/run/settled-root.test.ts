/** Settled running as a root: what a search says that finds none. */
import { describe, expect, it } from 'vitest';
import type { TurnFailure } from '../../../src/run/one-turn.ts';
import { settleByRoot } from '../../../src/run/settled-root.ts';
import { atFirst, levelByLaw, rootSystem, straight } from '../../support/level-by-law.ts';

describe('a search that finds nothing', () => {
  it('says that the engine cannot get round where a turn says so', () => {
    const failure = (speed: number): TurnFailure | undefined => (speed < 20 ? { reason: 'slow' } : undefined);
    const level = levelByLaw({ gain: () => -6, failure });
    expect(settleByRoot(rootSystem, atFirst(22), [level], 8)).toEqual({ kind: 'slow', turns: 2 });
  });

  it.each([1, 2])('says so where turn %i gives up on its way', (which) => {
    const failed: TurnFailure = { reason: 'non-finite', x: 3, component: 4 };
    const failure = (_speed: number, turn: number) => (turn === which ? failed : undefined);
    const level = levelByLaw({ gain: straight, failure, speed: 1e-9, gas: 1e-9 });
    const search = settleByRoot(rootSystem, atFirst(42), [level], 8);
    expect(search).toEqual({ kind: 'failed', failure: failed, turns: which });
  });
});
