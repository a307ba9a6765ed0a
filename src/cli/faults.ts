/** Outcomes that say something about this program rather than about the engine. */
import type { OutcomeKind } from '../index.ts';

export const faults: readonly OutcomeKind[] = ['step-limit', 'non-finite'];
