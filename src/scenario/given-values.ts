/** The values that a file gives, each with its path and its description. */
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import type { LeafParameter, Parameter, Parameters } from '../kinds/parameter.ts';
import { isLeaf, kindsOf } from './expectation.ts';
import { locate } from './locate.ts';
import type { Source } from './source.ts';

export interface GivenValue {
  /** Keys joined by points: "leaks.0.clearance". */
  readonly path: string;
  /** As it is written. */
  readonly text: string;
  readonly parameter: LeafParameter;
}

/** The text at a path; nothing where there is a group, a list or nothing at all. */
export function textIn(source: Source, path: readonly string[]): string | undefined {
  const { node, depth } = locate(source, path);
  return depth === path.length && isScalar(node) ? String(node.value).trim() : undefined;
}

/** Every value that a file gives and the description knows, in the order of the description. */
export function givenValues(source: Source, parameters: Parameters): readonly GivenValue[] {
  return inGroup(source, parameters, source.root, []);
}

function inGroup(
  source: Source,
  parameters: Parameters,
  node: Node,
  path: readonly string[],
): readonly GivenValue[] {
  return Object.entries(parameters).flatMap(([key, parameter]) => {
    const own = childOf(source, node, key);
    return own === undefined ? [] : inValue(source, parameter, own, [...path, key]);
  });
}

function childOf(source: Source, node: Node, key: string): Node | undefined {
  if (!isMap<Node, Node | null>(node)) return undefined;
  const pair = node.items.find((item) => isScalar(item.key) && item.key.value === key);
  return pair?.value ? source.resolve(pair.value) : undefined;
}

function inValue(
  source: Source,
  parameter: Parameter,
  node: Node,
  path: readonly string[],
): readonly GivenValue[] {
  if (isLeaf(parameter))
    return isScalar(node) ? [{ path: path.join('.'), text: String(node.value).trim(), parameter }] : [];
  switch (parameter.type) {
    case 'optional':
      return inValue(source, parameter.parameter, node, path);
    case 'group':
      return inGroup(source, parameter.parameters, node, path);
    case 'part': {
      const name = childOf(source, node, 'kind');
      const kind = kindsOf(parameter).find((own) => isScalar(name) && own.kind === name.value);
      return kind === undefined ? [] : inGroup(source, kind.parameters, node, path);
    }
    case 'part list':
      return isSeq<Node>(node)
        ? node.items.flatMap((item, i) => {
            const own = source.resolve(item);
            const entry: Parameter = { type: 'part', family: parameter.family, doc: parameter.doc };
            return own === undefined ? [] : inValue(source, entry, own, [...path, String(i)]);
          })
        : [];
    case 'text list':
    case 'settings':
      return [];
  }
}
