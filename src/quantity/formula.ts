/**
 * Formulas in one variable from a small grammar: numbers, the variable, pi, e, + - * / ^, brackets, a few functions, and
 * "a > b ? x : y". mathjs only turns the text into a tree; what is not listed here is refused, and the tree becomes plain
 * closures, so a formula can reach nothing but its argument and calling it allocates nothing.
 */
import {
  create,
  isConditionalNode,
  isConstantNode,
  isFunctionNode,
  isOperatorNode,
  isParenthesisNode,
  isSymbolNode,
  parseDependencies,
  type FunctionNode,
  type MathNode,
} from 'mathjs/number';
import { exp } from '../numerics/elementary/exponential.ts';
import { tanh } from '../numerics/elementary/hyperbolic.ts';
import { log } from '../numerics/elementary/logarithm.ts';
import { pow } from '../numerics/elementary/power.ts';
import { cos, sin, tan } from '../numerics/elementary/trigonometric.ts';
import { refusal, type Refusal } from './refusal.ts';

export type Formula = (x: number) => number;

export interface CompiledFormula {
  readonly ok: true;
  readonly value: Formula;
}

const math = create({ ...parseDependencies });

const maxLength = 300;
const maxNodes = 150;
const maxDepth = 30;

type Binary = (a: Formula, b: Formula) => Formula;

const operators: ReadonlyMap<string, Binary> = new Map<string, Binary>([
  ['add', (a, b) => (x) => a(x) + b(x)],
  ['subtract', (a, b) => (x) => a(x) - b(x)],
  ['multiply', (a, b) => (x) => a(x) * b(x)],
  ['divide', (a, b) => (x) => a(x) / b(x)],
  ['pow', (a, b) => (x) => pow(a(x), b(x))],
]);

const comparisons: ReadonlyMap<string, (a: Formula, b: Formula) => (x: number) => boolean> = new Map([
  ['larger', (a: Formula, b: Formula) => (x: number) => a(x) > b(x)],
  ['largerEq', (a: Formula, b: Formula) => (x: number) => a(x) >= b(x)],
  ['smaller', (a: Formula, b: Formula) => (x: number) => a(x) < b(x)],
  ['smallerEq', (a: Formula, b: Formula) => (x: number) => a(x) <= b(x)],
]);

const functions: ReadonlyMap<string, (x: number) => number> = new Map([
  ['abs', Math.abs],
  ['sqrt', Math.sqrt],
  ['exp', exp],
  ['log', log],
  ['sin', sin],
  ['cos', cos],
  ['tan', tan],
  ['tanh', tanh],
]);

const extremes: ReadonlyMap<string, Binary> = new Map<string, Binary>([
  ['min', (a, b) => (x) => Math.min(a(x), b(x))],
  ['max', (a, b) => (x) => Math.max(a(x), b(x))],
]);

const constants: ReadonlyMap<string, number> = new Map([
  ['pi', Math.PI],
  ['e', Math.E],
]);

/** Carries a refusal out of the recursion; never leaves this file. */
class Refused extends Error {}

export function compileFormula(text: string, variable: string): CompiledFormula | Refusal {
  const hint = allowedIn(variable);
  if (text.length > maxLength) return refusal(`longer than ${maxLength} characters`, hint);
  const tree = parsed(text);
  if (tree === undefined) return refusal('not a formula', hint);
  try {
    return { ok: true, value: compiled(measuredTree(tree), variable) };
  } catch (error) {
    if (error instanceof Refused) return refusal(error.message, hint);
    throw error;
  }
}

function allowedIn(variable: string): string {
  const names = [...functions.keys(), ...extremes.keys()].join(', ');
  return `Allowed are numbers, ${variable}, pi, e, + - * / ^, brackets, ${names}, and "a > b ? x : y".`;
}

function parsed(text: string): MathNode | undefined {
  try {
    return math.parse(text);
  } catch {
    // mathjs reports a syntax error by throwing.
    return undefined;
  }
}

function measuredTree(tree: MathNode): MathNode {
  let nodes = 0;
  const visit = (node: MathNode, depth: number): void => {
    nodes += 1;
    if (nodes > maxNodes || depth > maxDepth) throw new Refused('too complicated');
    node.forEach((child) => visit(child, depth + 1));
  };
  visit(tree, 1);
  return tree;
}

function compiled(node: MathNode, variable: string): Formula {
  const inner = (child: MathNode | undefined): Formula => {
    if (child === undefined) throw new Refused('an empty place');
    return compiled(child, variable);
  };
  if (isConstantNode(node)) return constant(node.value);
  if (isSymbolNode(node)) return symbol(node.name, variable);
  if (isParenthesisNode(node)) return inner(node.content);
  if (isOperatorNode(node)) return operation(node, inner);
  if (isFunctionNode(node)) return call(node, inner);
  if (isConditionalNode(node)) {
    const holds = comparison(node.condition, inner);
    const yes = inner(node.trueExpr);
    const no = inner(node.falseExpr);
    return (x) => (holds(x) ? yes(x) : no(x));
  }
  throw new Refused(construct(node));
}

function constant(value: unknown): Formula {
  if (typeof value !== 'number')
    throw new Refused(typeof value === 'string' ? 'a piece of text' : 'a value that is no number');
  if (!Number.isFinite(value)) throw new Refused('a number that is not finite');
  return () => value;
}

function symbol(name: string, variable: string): Formula {
  if (name === variable) return (x) => x;
  const value = constants.get(name);
  if (value === undefined) throw new Refused(`the unknown name "${name}"`);
  return () => value;
}

type Inner = (child: MathNode | undefined) => Formula;

interface Operation {
  readonly op: string;
  readonly fn: string;
  readonly implicit: boolean;
  readonly args: readonly MathNode[];
}

function operation(node: Operation, inner: Inner): Formula {
  if (node.implicit) throw new Refused('a product without "*"');
  const [first, second] = node.args;
  if (node.fn === 'unaryPlus') return inner(first);
  if (node.fn === 'unaryMinus') {
    const negated = inner(first);
    return (x) => -negated(x);
  }
  const combine = operators.get(node.fn);
  if (combine === undefined) throw new Refused(`the operator "${node.op}"`);
  return combine(inner(first), inner(second));
}

function comparison(node: MathNode, inner: Inner): (x: number) => boolean {
  if (isParenthesisNode(node)) return comparison(node.content, inner);
  const compare = isOperatorNode(node) ? comparisons.get(node.fn) : undefined;
  if (!isOperatorNode(node) || compare === undefined) throw new Refused('a condition that is no comparison');
  const [first, second] = node.args;
  return compare(inner(first), inner(second));
}

function call(node: FunctionNode, inner: Inner): Formula {
  // A callee may be any expression at run time, whatever its type says.
  const callee: MathNode = node.fn;
  const name = isSymbolNode(callee) ? callee.name : '';
  const extreme = extremes.get(name);
  if (extreme !== undefined && node.args.length > 0) return node.args.map(inner).reduce(extreme);
  if (extreme !== undefined) throw new Refused(`"${name}" with no values`);
  const f = functions.get(name);
  if (f === undefined) throw new Refused(name === '' ? 'a call of something else' : `the function "${name}"`);
  if (node.args.length !== 1) throw new Refused(`"${name}" with ${node.args.length} values instead of one`);
  const argument = inner(node.args[0]);
  return (x) => f(argument(x));
}

const constructs: ReadonlyMap<string, string> = new Map([
  ['AssignmentNode', 'an assignment'],
  ['FunctionAssignmentNode', 'the definition of a function'],
  ['AccessorNode', 'an access to an inner property'],
  ['IndexNode', 'an index'],
  ['ArrayNode', 'a list'],
  ['ObjectNode', 'an object'],
  ['BlockNode', 'several formulas'],
  ['RangeNode', 'a range'],
  ['RelationalNode', 'a chain of comparisons'],
]);

const construct = (node: MathNode): string => constructs.get(node.type) ?? 'something that is no formula';
