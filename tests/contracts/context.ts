/** The engine that parts under contract are built into. */
import fc from 'fast-check';
import type { AnyKind, Chosen } from '../../src/kinds/kind.ts';
import { partContext } from '../../src/parts/engine-description.ts';
import type { PartContext } from '../../src/parts/part-context.ts';
import { arbitraryValues, passing } from '../support/arbitrary-values.ts';
import { referenceSpec } from '../support/reference-engine.ts';

export const context: PartContext = partContext(referenceSpec());

/** For what only an engine with a rod through a gland can have. */
const doubleActing: PartContext = partContext(
  referenceSpec({ cylinder: { action: 'double', piston_rod_diameter: 8e-3 } }),
);

const suited = <Part>(choice: Chosen<PartContext, Part>): PartContext | undefined =>
  [context, doubleActing].find((engine) => choice.complaints(engine).length === 0);

/** Random choices of a kind that pass its own checks, built into an engine that suits; the same ones each time. */
export function samplesOf<Part>(
  kind: AnyKind<PartContext, Part>,
  count: number,
  strays = 3,
): Chosen<PartContext, Part>[] {
  const choices = arbitraryValues(kind.parameters, { size: 1, strays }).map((values) => kind.choose(values));
  const possible = passing(choices, (choice) => suited(choice) !== undefined, kind.kind).map((choice) => ({
    ...choice,
    build: () => choice.build(suited(choice) ?? context),
  }));
  return fc.sample(possible, { numRuns: count, seed: 1848 });
}
