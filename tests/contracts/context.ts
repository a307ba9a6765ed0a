/** The engine that parts under contract are built into. */
import fc from 'fast-check';
import type { AnyKind, Chosen } from '../../src/kinds/kind.ts';
import { crankTrain } from '../../src/parts/cylinder.ts';
import { partContext } from '../../src/parts/engine-description.ts';
import type { PartContext } from '../../src/parts/part-context.ts';
import { arbitraryValues, passing } from '../support/arbitrary-values.ts';
import { referenceSpec } from '../support/reference-engine.ts';

export const context: PartContext = partContext(referenceSpec());

const doubleActing = referenceSpec({ cylinder: { action: 'double', piston_rod_diameter: 12e-3 } });

/** The same engine working on both sides of its piston, as its cover end sees it, and as its crank end does. */
const coverEnd: PartContext = partContext(doubleActing);
export const crankEnd: PartContext = { ...coverEnd, crank: crankTrain(doubleActing.cylinder, 'crank') };

/** An engine that a kind can belong to: only a double-acting cylinder has a gland. */
export const possibleContext = (kind: string): PartContext => (kind === 'rod gland' ? coverEnd : context);

/** Random choices of a kind that pass its own checks in an engine; the same ones each time. */
export function samplesOf<Part>(
  kind: AnyKind<PartContext, Part>,
  count: number,
  strays = 3,
  own = context,
): Chosen<PartContext, Part>[] {
  const choices = arbitraryValues(kind.parameters, { size: 1, strays }).map((values) => kind.choose(values));
  const possible = passing(choices, (choice) => choice.complaints(own).length === 0, kind.kind);
  return fc.sample(possible, { numRuns: count, seed: 1848 });
}
