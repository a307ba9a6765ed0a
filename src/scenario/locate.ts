/** Where in the file a path of keys leads. */
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import { startOf, type Source } from './source.ts';

export interface Location {
  /** The deepest node on the path that the file has, and where to point for it. */
  readonly node: Node;
  readonly offset: number;
  /** How many keys of the path exist. */
  readonly depth: number;
}

export function locate(source: Source, path: readonly string[]): Location {
  let here: Location = { node: source.root, offset: startOf(source.root), depth: 0 };
  for (const key of path) {
    const next = child(source, here, key);
    if (next === undefined) return here;
    here = next;
  }
  return here;
}

function child(source: Source, { node, depth }: Location, key: string): Location | undefined {
  if (isMap<Node, Node | null>(node)) {
    const pair = node.items.find((item) => isScalar(item.key) && item.key.value === key);
    const value = pair?.value ? source.resolve(pair.value) : undefined;
    if (pair === undefined || value === undefined) return undefined;
    // A value is pointed at itself, a group at its key.
    return { node: value, offset: startOf(isScalar(value) ? value : pair.key), depth: depth + 1 };
  }
  if (!isSeq<Node>(node)) return undefined;
  const item = node.items[Number(key)];
  const value = item === undefined ? undefined : source.resolve(item);
  return value === undefined ? undefined : { node: value, offset: startOf(value), depth: depth + 1 };
}
