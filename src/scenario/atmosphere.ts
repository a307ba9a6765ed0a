/** The pressure that gauge pressures of a file are counted from: its own `atmosphere.pressure`. */
import { isScalar } from 'yaml';
import type { Parameters } from '../kinds/parameter.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { KnownValues } from './known-values.ts';
import { locate } from './locate.ts';
import type { Atmosphere } from './read-leaf.ts';
import type { Source } from './source.ts';

const path = ['atmosphere', 'pressure'] as const;
const standardAtmosphere = 101_325;

export const isAtmosphericPressure = (other: readonly string[]): boolean =>
  other.length === path.length && path.every((key, index) => other[index] === key);

/** Read ahead of the rest; if it is wrong it is reported in its turn, and the others are checked against a likely one. */
export function atmosphereOf(source: Source, parameters: Parameters, known: KnownValues): Atmosphere {
  const [groupKey, pressureKey] = path;
  const group = parameters[groupKey];
  const pressure = group?.type === 'group' ? group.parameters[pressureKey] : undefined;
  if (pressure?.type !== 'quantity') return undefined;
  const { node, depth } = locate(source, path);
  // A file that was read with the same text here counted from the same pressure.
  const before = known.get(node);
  if (before?.parameter === pressure) return before.atmosphere;
  const text = depth === path.length && isScalar(node) ? String(node.value) : '';
  const parsed = parseQuantity(text, 'pressure');
  if (parsed.ok && parsed.reference === 'absolute') return parsed.value;
  return pressure.default ?? standardAtmosphere;
}
