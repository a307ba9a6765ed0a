/**
 * The text of a file as a tree of YAML nodes that remember where they stand.
 *
 * Every scalar stays the text it is ("failsafe" schema): what a text means is said by the parameter it belongs to, so
 * neither `no` nor `1e3` nor `12:30` ever changes its meaning by itself.
 */
import {
  isAlias,
  isCollection,
  isScalar,
  LineCounter,
  parseDocument,
  visit,
  type Document,
  type Node,
} from 'yaml';
import { inFileOrder, type Problem, type Whereabouts } from './problem.ts';
import { formProblem, limits, limitProblem, type Finding } from './source-limits.ts';

export interface Source {
  readonly file: string;
  readonly text: string;
  readonly root: Node;
  at(offset: number): Whereabouts;
  /** The node an alias stands for; any other node itself. */
  resolve(node: Node): Node | undefined;
}

export type OpenedSource =
  | { readonly ok: true; readonly source: Source }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export function openSource(textWithMark: string, file: string): OpenedSource {
  const text = textWithMark.replace(/^\uFEFF/u, '');
  const lines = countLines(text);
  const at = (offset: number) => {
    const { line, col } = lines.linePos(Math.min(Math.max(offset, 0), text.length));
    return { file, line, column: col };
  };
  const refused = (findings: readonly Finding[]): OpenedSource => {
    const problems = findings.map(({ offset, ...words }) => ({ ...at(offset), path: [], ...words }));
    return { ok: false, problems: inFileOrder(problems) };
  };

  const tooMuch = limitProblem(text, lines.lineStarts);
  if (tooMuch !== undefined) return refused([tooMuch]);
  // Duplicate keys are looked for where keys are read: the parser takes quadratic time for it.
  const document = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, prettyErrors: false });
  const tree = document.contents;
  const tooDeep = tree === null ? undefined : depthProblem(tree);
  if (tooDeep !== undefined) return refused([tooDeep]);
  const warnings = document.warnings.filter(({ code }) => code !== 'TAG_RESOLVE_FAILED');
  const form = [...document.errors, ...warnings].map((mistake) => {
    const finding = formProblem(mistake);
    return finding.offset === text.length ? (openQuote(finding, tree) ?? finding) : finding;
  });
  if (form.length > 0) return refused(firstOfEachLine(form, at));
  if (tree === null || isNothing(tree)) return refused([emptyFile]);
  const forbidden = forbiddenNodes(document);
  if (forbidden.length > 0) return refused(forbidden);
  const targets = aliasTargets(document);
  const resolve = (node: Node) => (isAlias(node) ? targets.get(node) : node);
  return { ok: true, source: { file, text, root: tree, at, resolve } };
}

function countLines(text: string): LineCounter {
  const lines = new LineCounter();
  lines.addNewLine(0);
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) lines.addNewLine(i + 1);
  return lines;
}

const emptyFile: Finding = { offset: 0, expected: 'a description', received: 'an empty file' };

/** Neither a value nor a key: an empty file, or `key:` with nothing after it. */
export const isNothing = (node: Node): boolean =>
  isScalar(node) && node.type === 'PLAIN' && ['', '~', 'null'].includes(String(node.value));

/** A slip upsets what follows it on its line; only the first complaint is worth reading. */
function firstOfEachLine(findings: readonly Finding[], at: Source['at']): Finding[] {
  const first = new Map<number, Finding>();
  for (const finding of findings) {
    const { line } = at(finding.offset);
    const known = first.get(line);
    if (known === undefined || finding.offset < known.offset) first.set(line, finding);
  }
  return [...first.values()];
}

function depthProblem(root: Node): Finding | undefined {
  let found: Finding | undefined;
  visit(root, {
    Collection: (_key, node, path) => {
      if (path.filter((ancestor) => isCollection(ancestor)).length < limits.depth) return undefined;
      found = { offset: startOf(node), ...limits.tooDeep };
      return visit.BREAK;
    },
  });
  return found;
}

/** A quotation mark that is never closed swallows the rest of the file: point at where it was opened. */
function openQuote({ offset }: Finding, root: Node | null): Finding | undefined {
  let found: Finding | undefined;
  visit(root, {
    Scalar: (_key, node) => {
      if (node.type?.startsWith('QUOTE') !== true || node.range?.[1] !== offset) return;
      found = { offset: startOf(node), ...limits.openQuote };
    },
  });
  return found;
}

function forbiddenNodes(document: Document.Parsed): Finding[] {
  const found: Finding[] = [];
  let aliases = 0;
  visit(document, {
    Value: (_key, node) => {
      if (node.tag !== undefined) found.push({ offset: startOf(node), ...limits.tag });
    },
    Alias: (_key, node) => {
      aliases += 1;
      if (aliases > limits.aliases) {
        found.push({ offset: startOf(node), ...limits.tooManyAliases });
        return visit.BREAK;
      }
      if (node.resolve(document) === undefined)
        found.push({ offset: startOf(node), ...limits.danglingAlias });
      return undefined;
    },
  });
  return found;
}

/** What each alias stands for in the file as it is written, whatever is said beside it. */
function aliasTargets(document: Document.Parsed): ReadonlyMap<Node, Node> {
  const targets = new Map<Node, Node>();
  visit(document, {
    Alias: (_key, node) => {
      const target = node.resolve(document);
      if (target !== undefined) targets.set(node, target);
    },
  });
  return targets;
}

export const startOf = (node: Node): number => node.range?.[0] ?? 0;
