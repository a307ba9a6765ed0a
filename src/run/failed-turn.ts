import type { Milestone } from './motion.ts';
import type { TurnFailure } from './one-turn.ts';

/** What a measured turn that gave up means for the run. */
export const failedTurn = (failure: TurnFailure): Milestone =>
  failure.reason === 'non-finite'
    ? { kind: 'non-finite', component: failure.component }
    : { kind: 'step-limit' };
