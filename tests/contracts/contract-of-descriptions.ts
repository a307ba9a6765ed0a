/** What every family and every table of parameters owes its readers: names, sentences, ranges and examples that hold. */
import type { Family } from '../../src/kinds/kind.ts';
import type {
  ChoiceParameter,
  ClearanceParameter,
  CountParameter,
  LeafParameter,
  NumberParameter,
  Parameter,
  Parameters,
  QuantityParameter,
  ReadingColumn,
  ReadingsParameter,
  TableParameter,
} from '../../src/kinds/parameter.ts';
import { parseClearance } from '../../src/quantity/clearance.ts';
import { parseCrankPosition } from '../../src/quantity/crank-position.ts';
import { dimensions } from '../../src/quantity/dimensions.ts';
import { compileFormula } from '../../src/quantity/formula.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';
import { exampleValue } from '../support/arbitrary-values.ts';
import { about, repeated, unless } from './complaints.ts';

type AnyFamily = Family<unknown, unknown>;

const isSentence = (doc: string): boolean => doc.trim().length > 3 && doc.trim().endsWith('.');

function rangeComplaints({
  min,
  max,
  default: preset,
}: CountParameter | NumberParameter | QuantityParameter) {
  return [
    ...unless(Number.isFinite(min) && Number.isFinite(max) && min <= max, `has no range: ${min} to ${max}`),
    ...unless(preset === undefined || (preset >= min && preset <= max), 'has its default outside its range'),
  ];
}

function measureComplaints(parameter: NumberParameter | QuantityParameter): string[] {
  const { min, max, example } = parameter;
  const dimensionless = parameter.type === 'number' || parameter.dimension in dimensions;
  if (!dimensionless) return ['has an unknown dimension'];
  try {
    const value = exampleValue(parameter);
    return unless(value >= min && value <= max, `has its example "${example}" outside its range`);
  } catch (error) {
    return [String(error)];
  }
}

const choiceComplaints = ({ choices, default: preset }: ChoiceParameter): string[] => [
  ...unless(choices.length > 0 && repeated(choices).length === 0, 'has no choices, or one twice'),
  ...unless(preset === undefined || choices.includes(preset), 'has a default that is no choice'),
];

/** Each column has a range in a unit of its own dimension; steps of the argument fit into the period. */
function tableColumnComplaints({ argument, columns, example, mostRows }: TableParameter): string[] {
  const names = [argument.name, ...Object.keys(columns)];
  return [
    ...[argument, ...Object.values(columns)].flatMap(({ min, max, unit, dimension }) => [
      ...unless(min < max && Number.isFinite(max - min), `has a column without range: ${min} to ${max}`),
      ...unless(parseQuantity(`1 ${unit}`, dimension).ok, `has a column in "${unit}"`),
    ]),
    ...unless(
      names.every((name) => /^[a-z]+(_[a-z]+)*$/.test(name)),
      'has a column with a poor name',
    ),
    ...unless(argument.largestStep * mostRows > argument.max - argument.min, 'cannot be filled'),
    ...unless(example.endsWith('.csv'), 'has an example that is no file name'),
  ];
}

/** Every word it offers can be written, and its example is a gap within its range. */
function clearanceParameterComplaints({ words, example, max }: ClearanceParameter): string[] {
  const { holes, shafts, grades, boreFinishes, rodFinishes } = words;
  const [grade = ''] = grades;
  const gap = parseClearance(example, words, example);
  const fits = holes.flatMap((hole) => shafts.map((shaft) => `${hole}${grade}/${shaft}${grade}`));
  const finishes = boreFinishes.flatMap((bore) => rodFinishes.map((rod) => `${bore} / ${rod}`));
  const unreadable = [...fits, ...finishes].filter((text) => !parseClearance(text, words, example).ok);
  return [
    ...unless(
      gap.ok && gap.value.by === 'gap' && gap.value.gap <= max,
      `has its example "${example}" not a gap within its range`,
    ),
    ...unless(fits.length > 0 && finishes.length > 0, 'offers no fits or no finishes'),
    ...unreadable.map((text) => `offers "${text}", which cannot be read`),
  ];
}

/** Its columns are called as the examples begin, and its example is a file. */
function readingsComplaints({
  columns,
  optionalColumns,
  leastRows,
  mostRows,
  example,
}: ReadingsParameter): string[] {
  const all = Object.entries<ReadingColumn>({ ...columns, ...optionalColumns });
  return [
    ...all.flatMap(([name, column]) => [
      ...unless(column.min < column.max, `has a range of "${name}" without inside`),
      ...unless(column.example.startsWith(`${name}_`), `has an example of "${name}" with another name`),
    ]),
    ...unless(leastRows >= 1 && leastRows < mostRows, 'takes no rows'),
    ...unless(example.endsWith('.csv'), 'has an example that is no file name'),
  ];
}

function leafComplaints(parameter: LeafParameter): string[] {
  switch (parameter.type) {
    case 'quantity':
    case 'number':
      return [...rangeComplaints(parameter), ...measureComplaints(parameter)];
    case 'count':
      return rangeComplaints(parameter);
    case 'choice':
      return choiceComplaints(parameter);
    case 'text':
      return unless((parameter.default ?? '').length <= parameter.maxLength, 'has too long a default');
    case 'formula':
      return unless(
        compileFormula(parameter.example, parameter.variable).ok && parameter.variablePerSi > 0,
        'has an example that does not compile',
      );
    case 'crank position':
      return unless(parseCrankPosition(parameter.example).ok, 'has an example that is no crank position');
    case 'table':
      return tableColumnComplaints(parameter);
    case 'readings':
      return readingsComplaints(parameter);
    case 'clearance':
      return clearanceParameterComplaints(parameter);
  }
}

function parameterComplaints(parameter: Parameter): string[] {
  if (parameter.type === 'optional') return parameterComplaints(parameter.parameter);
  const doc = unless(isSentence(parameter.doc), 'is not explained in a sentence');
  switch (parameter.type) {
    case 'group':
      return [...doc, ...tableComplaints(parameter.parameters)];
    case 'part': {
      const { kinds } = parameter.family as AnyFamily;
      const { defaultKind } = parameter;
      const known = defaultKind === undefined || kinds.some(({ kind }) => kind === defaultKind);
      return [...doc, ...unless(known, 'has a default kind that is not registered')];
    }
    case 'part list':
      return [...doc, ...unless(parameter.maxLength > 0, 'takes no part')];
    case 'text list':
      return [...doc, ...unless(parameter.max > parameter.min && parameter.min >= 0, 'takes no text')];
    case 'settings':
      return [...doc, ...unless(parameter.most > 0, 'takes no value')];
    case 'quantity':
    case 'number':
    case 'count':
    case 'choice':
    case 'text':
    case 'formula':
    case 'crank position':
    case 'table':
    case 'readings':
    case 'clearance':
      return [...doc, ...leafComplaints(parameter)];
  }
}

/** A table of parameters. */
export function tableComplaints(parameters: Parameters): string[] {
  return Object.entries(parameters).flatMap(([key, parameter]) =>
    about(key, [
      ...unless(/^[a-z]+(_[a-z]+)*$/.test(key), 'is not spelled in small letters and underscores'),
      ...parameterComplaints(parameter),
    ]),
  );
}

/** A family and all its kinds. */
export function familyComplaints({ name, kinds }: Pick<AnyFamily, 'name' | 'kinds'>): string[] {
  const names = kinds.map(({ kind }) => kind);
  return about(name, [
    ...unless(name.trim() !== '' && kinds.length > 0, 'has no name or no kinds'),
    ...repeated(names).map((kind) => `lists "${kind}" twice`),
    ...kinds.flatMap(({ kind, doc, parameters }) =>
      about(kind, [
        ...unless(kind.trim() === kind && kind !== '', 'has no proper name'),
        ...unless(isSentence(doc), 'is not explained in a sentence'),
        ...tableComplaints(parameters),
      ]),
    ),
  ]);
}
