/**
 * Contract of the leak family: gaps and holes that the valve gear does not know about. Each cylinder has every leak of
 * the list, seen from its cover end.
 */
import type { Family } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import type { Passage } from '../passage.ts';

export type LeakFamily = Family<PartContext, Passage>;
