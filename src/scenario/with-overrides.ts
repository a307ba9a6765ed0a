/**
 * A file with some of its values replaced. Nothing is written into the file's own tree: the maps and lists on the way to
 * a replaced value are copied, so that what an alias elsewhere stands for stays as it was.
 *
 * Every replaced value stands at an offset of its own beyond the end of the text; `at` of such an offset is where the
 * override was said. Whoever points at a value of the file by its offset thereby points at an override as well.
 */
import { isMap, isScalar, isSeq, Pair, Scalar, YAMLMap, YAMLSeq, type Node } from 'yaml';
import type { Override } from './override.ts';
import { inFileOrder, type Problem } from './problem.ts';
import type { OpenedSource, Source } from './source.ts';

export function withOverrides(source: Source, overrides: readonly Override[]): OpenedSource {
  if (overrides.length === 0) return { ok: true, source };
  const beyond = source.text.length + 1;
  const problems: Problem[] = [];
  let root: Node | undefined = source.root;
  // A new kind of part wipes what the old one was given, so kinds go first, the outer before the inner.
  const order = overrides.map((override, i) => ({ override, offset: beyond + i }));
  order.sort((a, b) => Number(setsKind(b.override)) - Number(setsKind(a.override)));
  for (const { override, offset } of order) {
    const change: Change = { source, override, offset, problems };
    root = replaced(change, root, override.path);
  }
  if (problems.length > 0) return { ok: false, problems: inFileOrder(problems) };
  const at: Source['at'] = (offset) => overrides[offset - beyond]?.at ?? source.at(offset);
  return { ok: true, source: { ...source, root, at } };
}

const setsKind = ({ path }: Override): boolean => path.at(-1) === 'kind';

interface Change {
  readonly source: Source;
  readonly override: Override;
  readonly offset: number;
  readonly problems: Problem[];
}

function placed<N extends Node>(node: N, { offset }: Change): N {
  node.range = [offset, offset, offset];
  return node;
}

/** Quoted, for a plain "null" would be no value at all. */
function scalar(change: Change, text: string): Scalar {
  const node = placed(new Scalar(text), change);
  node.type = 'QUOTE_DOUBLE';
  return node;
}

/** The node with the rest of the path replaced below it. */
function replaced(change: Change, node: Node | undefined, path: readonly string[]): Node {
  const [key, ...rest] = path;
  if (key === undefined) return scalar(change, change.override.value);
  const own = node === undefined ? undefined : change.source.resolve(node);
  if (isSeq<Node>(own)) return inList(change, own, key, rest);
  if (own === undefined && key === '0') return inList(change, placed(new YAMLSeq<Node>(), change), key, rest);
  return inMap(change, own, key, rest);
}

/** Anything but a map gives way to one; whether there may be one at all is for the reader to say. */
function inMap(change: Change, own: Node | undefined, key: string, rest: readonly string[]): Node {
  const old = isMap<Node, Node | null>(own) ? own : undefined;
  const copy = new YAMLMap<Node, Node | null>();
  copy.range = old?.range ?? placed(scalar(change, ''), change).range ?? null;
  const items = old?.items ?? [];
  const index = items.findIndex((item) => isScalar(item.key) && item.key.value === key);
  const pair = items[index];
  const value = replaced(change, pair?.value ?? undefined, rest);
  if (key === 'kind' && rest.length === 0 && !saysTheSame(change, pair?.value, value)) {
    copy.items = [new Pair<Node, Node | null>(scalar(change, key), value)];
    return copy;
  }
  copy.items =
    pair === undefined
      ? [...items, new Pair<Node, Node | null>(scalar(change, key), value)]
      : items.with(index, new Pair<Node, Node | null>(pair.key, value));
  return copy;
}

function saysTheSame({ source }: Change, old: Node | null | undefined, value: Node): boolean {
  const before = old ? source.resolve(old) : undefined;
  return isScalar(before) && isScalar(value) && before.value === value.value;
}

function inList(change: Change, own: YAMLSeq<Node>, key: string, rest: readonly string[]): Node {
  const { items } = own;
  const index = /^\d+$/u.test(key) ? Number(key) : Infinity;
  if (index > items.length) {
    change.problems.push(noSuchPlace(change, key, items.length));
    return own;
  }
  const copy = new YAMLSeq<Node>();
  copy.range = own.range ?? null;
  copy.items = [...items];
  copy.items[index] = replaced(change, items[index], rest);
  return copy;
}

function noSuchPlace({ override }: Change, key: string, length: number): Problem {
  const { at, path } = override;
  const last = length <= 1 ? '0' : `a number from 0 to ${length - 1}`;
  return {
    ...at,
    path: path.slice(0, path.indexOf(key)),
    expected: `a place in the list, ${last}${length === 0 ? '' : `, or ${length}`} for a new entry`,
    received: `"${key}"`,
  };
}
