/** What a parameter wants, in words: "a length from 0 mm to 10 mm". */
import type { AnyKind, Family } from '../kinds/kind.ts';
import type {
  LeafParameter,
  Parameter,
  Parameters,
  PartListParameter,
  PartParameter,
  ReadingsParameter,
  TableParameter,
} from '../kinds/parameter.ts';
import { dimensions } from '../quantity/dimensions.ts';
import { formatNumberRange, formatQuantity, formatRange } from '../quantity/format.ts';

/** A family whatever its parts are built from: the reader only binds values. */
export const kindsOf = (parameter: PartParameter | PartListParameter): readonly AnyKind<unknown, unknown>[] =>
  (parameter.family as Family<unknown, unknown>).kinds;

export function expectation(parameter: Parameter): string {
  switch (parameter.type) {
    case 'optional':
      return expectation(parameter.parameter);
    case 'quantity': {
      const { min, max, dimension } = parameter;
      return `${dimensions[dimension].name} ${formatRange(min, max, dimension)}`;
    }
    case 'number':
      return `a number ${formatNumberRange(parameter.min, parameter.max)}`;
    case 'count':
      return `a whole number ${formatNumberRange(parameter.min, parameter.max)}`;
    case 'choice':
      return `one of: ${parameter.choices.join(', ')}`;
    case 'text':
      return `a text of at most ${parameter.maxLength} characters`;
    case 'formula':
      return `a formula in ${parameter.variable} for ${dimensions[parameter.result].name} in ${dimensions[parameter.result].si[0]}`;
    case 'crank position':
      return 'a crank angle or a share of a stroke';
    case 'table':
      return `the name of a CSV file with the columns ${tableHeaders(parameter).join(', ')}`;
    case 'readings':
      return `the name of a CSV file with columns such as ${readingsHeader(parameter)}${ifNeedBe(parameter)}`;
    case 'clearance':
      return (
        `a radial gap ${formatRange(0, parameter.max, 'length')}, a fit such as H7/g6, ` +
        'or two finishes such as reamed / turned'
      );
    case 'group':
      return `a group with ${keysToGive(parameter.parameters).join(', ')}`;
    case 'part':
      return expectedKind(parameter);
    case 'text list':
      return `a list of ${parameter.min === 0 ? 'at most' : `${parameter.min} to`} ${parameter.max} texts such as "${parameter.example}"`;
    case 'part list':
      return `a list of at most ${parameter.maxLength} entries, each ${expectedKind(parameter)}`;
    case 'settings':
      return `at most ${parameter.most} values of the scenario by their paths`;
  }
}

/** "a kind of load (constant, fan)" */
export function expectedKind(parameter: PartParameter | PartListParameter): string {
  const { name } = parameter.family as Family<unknown, unknown>;
  return `a kind of ${name} (${kindNames(parameter).join(', ')})`;
}

/** The first line of a table's file, cell by cell. */
export function tableHeaders({ argument, columns }: TableParameter): string[] {
  const others = Object.entries(columns).map(([name, { unit }]) => `${name}_${unit}`);
  return [`${argument.name}_${argument.unit}`, ...others];
}

function ifNeedBe({ optionalColumns }: ReadingsParameter): string {
  const names = Object.values(optionalColumns).map(({ example }) => example);
  return names.length === 0 ? '' : `, and if need be ${names.join(', ')}`;
}

/** A header that would do, without what may be left out. */
export const readingsHeader = ({ columns }: ReadingsParameter): string =>
  Object.values(columns)
    .map(({ example }) => example)
    .join(',');

/** The keys a group cannot do without; of a group that needs none, all it may have. */
function keysToGive(parameters: Parameters): string[] {
  const keys = Object.keys(parameters);
  const needed = Object.entries(parameters).filter(([, parameter]) => !mayBeAbsent(parameter));
  return needed.length > 0 ? needed.map(([key]) => key) : keys;
}

export const kindNames = (parameter: PartParameter | PartListParameter): string[] =>
  kindsOf(parameter).map(({ kind }) => kind);

/** How one would write a value. */
export function exampleOf(parameter: LeafParameter): string {
  switch (parameter.type) {
    case 'quantity':
    case 'number':
    case 'formula':
    case 'crank position':
    case 'table':
    case 'readings':
    case 'clearance':
      return parameter.example;
    case 'count':
      return String(parameter.default ?? parameter.min);
    case 'choice':
      return parameter.default ?? parameter.choices[0] ?? '';
    case 'text':
      return parameter.default ?? '…';
  }
}

/** A parameter that one scalar says everything about. */
export function isLeaf(parameter: Parameter): parameter is LeafParameter {
  return !['optional', 'group', 'part', 'part list', 'settings', 'text list'].includes(parameter.type);
}

/** SI, or `undefined` for a parameter that has to be given. */
export const presetOf = (parameter: LeafParameter): unknown =>
  'default' in parameter ? parameter.default : undefined;

/** What is taken for a value that is left out, in words; `undefined` if it must not be. */
export function presetText(parameter: LeafParameter): string | undefined {
  if (!('default' in parameter)) return undefined;
  if (parameter.type === 'quantity')
    return formatQuantity(parameter.default, parameter.dimension, { digits: 6 });
  if (typeof parameter.default === 'object') return exampleOf(parameter);
  return parameter.default === '' ? 'empty' : String(parameter.default);
}

/** Whether a description is complete without a word about this parameter. */
export function mayBeAbsent(parameter: Parameter): boolean {
  if (isLeaf(parameter)) return presetOf(parameter) !== undefined;
  switch (parameter.type) {
    case 'optional':
    case 'part list':
      return true;
    case 'group':
      return parameter.optional === true || Object.values(parameter.parameters).every(mayBeAbsent);
    case 'part':
      return parameter.defaultKind !== undefined;
    case 'text list':
      return parameter.min === 0;
    case 'settings':
      return !parameter.needed;
  }
}
