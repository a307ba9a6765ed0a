/** Every key of a description, with its place and the kinds of part it belongs to. */
import type { Parameter, Parameters } from '../kinds/parameter.ts';
import { kindsOf } from './expectation.ts';

/** A key with its description. */
export interface DescribedKey {
  /** From the top of the file; entries of a list have no number. */
  readonly path: readonly string[];
  /** Kinds that have to be chosen on the way for the key to exist. */
  readonly kinds: readonly string[];
  readonly parameter: Parameter;
}

/** Outer keys before inner ones, in the order of the description. */
export function describedKeys(
  parameters: Parameters,
  path: readonly string[] = [],
  kinds: readonly string[] = [],
): DescribedKey[] {
  return Object.entries(parameters).flatMap(([key, parameter]) => {
    const own = { path: [...path, key], kinds, parameter };
    return [own, ...keysBelow(own)];
  });
}

function keysBelow({ path, kinds, parameter }: DescribedKey): DescribedKey[] {
  if (parameter.type === 'group') return describedKeys(parameter.parameters, path, kinds);
  if (parameter.type !== 'part' && parameter.type !== 'part list') return [];
  return kindsOf(parameter).flatMap((kind) => describedKeys(kind.parameters, path, [...kinds, kind.kind]));
}
