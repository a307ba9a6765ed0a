/** The engine that parts under contract are built into. */
import fc from 'fast-check';
import type { AnyKind, Chosen } from '../../src/kinds/kind.ts';
import { partContext } from '../../src/parts/engine-description.ts';
import type { PartContext } from '../../src/parts/part-context.ts';
import { arbitraryValues, passing } from '../support/arbitrary-values.ts';
import { referenceSpec } from '../support/reference-engine.ts';

export const context: PartContext = partContext(referenceSpec());

/** Random choices of a kind that pass its own checks; the same ones each time. */
export function samplesOf<Part>(
  kind: AnyKind<PartContext, Part>,
  count: number,
  strays = 3,
): Chosen<PartContext, Part>[] {
  const choices = arbitraryValues(kind.parameters, { size: 1, strays }).map((values) => kind.choose(values));
  const possible = passing(choices, (choice) => choice.complaints(context).length === 0, kind.kind);
  return fc.sample(possible, { numRuns: count, seed: 1848 });
}
