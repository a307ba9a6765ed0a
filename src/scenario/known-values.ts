/**
 * Values that were read before, by the nodes they stand at. A file that is read again and again with a few values replaced
 * keeps all its other nodes, and what stands there means the same each time.
 */
import type { Node } from 'yaml';
import type { Parameter } from '../kinds/parameter.ts';
import type { Atmosphere } from './read-leaf.ts';

interface Known {
  /** An alias may bring one node to several places, and gauge pressures below it count from a pressure elsewhere. */
  readonly parameter: Parameter;
  readonly atmosphere: Atmosphere;
  readonly value: unknown;
}

export type KnownValues = WeakMap<Node, Known>;
