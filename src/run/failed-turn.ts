import type { Milestone } from './motion.ts';
import type { TurnFailure } from './one-turn.ts';

/** What a measured turn that gave up means for the run. */
export function failedTurn(failure: TurnFailure): Milestone {
  if (failure.reason === 'non-finite') return { kind: 'non-finite', component: failure.component };
  return { kind: failure.reason === 'slow' ? 'hardly gets round' : 'step-limit' };
}
