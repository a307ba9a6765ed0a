/**
 * Random values for any table of parameters, read off its descriptions alone, so that a new kind is under test as soon as
 * it is registered.
 *
 * Plausible values lie about the example that each parameter carries, the lengths of one engine scaled together (a torque
 * goes with the third power of the size, and so on). A stray value lies anywhere in the declared range, ends included.
 */
import fc, { type Arbitrary } from 'fast-check';
import type { Family } from '../../src/kinds/kind.ts';
import { quantity } from '../../src/kinds/describe.ts';
import type {
  Clearance,
  ClearanceParameter,
  CountParameter,
  CrankPosition,
  Dimension,
  FormulaParameter,
  LeafParameter,
  NumberParameter,
  Parameter,
  Parameters,
  QuantityParameter,
  Table,
  TableColumn,
  TableParameter,
} from '../../src/kinds/parameter.ts';
import { parseCrankPosition } from '../../src/quantity/crank-position.ts';
import { compileFormula } from '../../src/quantity/formula.ts';
import { parsePureNumber } from '../../src/quantity/number.ts';
import { parseQuantity } from '../../src/quantity/parse-quantity.ts';

export interface Manner {
  /** Size of the engine in terms of the examples. */
  readonly size: number;
  /** How many of a hundred values stray. */
  readonly strays: number;
}

type Measured = QuantityParameter | NumberParameter;

/** Power of the size with which a quantity grows; those not listed stay. */
const sizePower: Partial<Record<Dimension, number>> = {
  length: 1,
  area: 2,
  volume: 3,
  mass: 3,
  force: 2,
  'force per pressure': 2,
  torque: 3,
  'torque per speed': 4,
  'moment of inertia': 5,
  'volume flow': 3,
  'rotational speed': -1,
};

const ROOM_PRESSURE = 101_325;

const real = (min: number, max: number): Arbitrary<number> => fc.double({ min, max, noNaN: true });

const within = ({ min, max }: Measured, value: number): number => Math.min(max, Math.max(min, value));

/** What a border function read from an example; a refusal is a mistake in the description. */
function must<Reading extends { readonly ok: boolean }>(
  reading: Reading,
  example: string,
): Extract<Reading, { readonly ok: true }> {
  if (!reading.ok) throw new Error(`"${example}" is not what its parameter asks for`);
  return reading as Extract<Reading, { readonly ok: true }>;
}

/** The example of a parameter in SI; a gauge pressure counts from a standard room. */
export function exampleValue(parameter: Measured): number {
  const { example } = parameter;
  if (parameter.type === 'number') return must(parsePureNumber(example, example), example).value;
  const { value, reference } = must(parseQuantity(example, parameter.dimension, example), example);
  return reference === 'gauge' ? value + ROOM_PRESSURE : value;
}

/** Anywhere in the declared range, evenly in the logarithm; a range from zero reaches down to a millionth of its top. */
function stray(parameter: Measured): Arbitrary<number> {
  const { min, max } = parameter;
  const low = min > 0 ? min : max * 1e-6;
  const inner =
    min < 0 ? real(min, max) : real(Math.log(low), Math.log(max)).map((x) => within(parameter, Math.exp(x)));
  return fc.oneof({ arbitrary: fc.constantFrom(min, max), weight: 1 }, { arbitrary: inner, weight: 2 });
}

function measured(parameter: Measured, { size, strays }: Manner): Arbitrary<number> {
  const dimension = parameter.type === 'quantity' ? parameter.dimension : undefined;
  const middle = exampleValue(parameter) * size ** (dimension ? (sizePower[dimension] ?? 0) : 0);
  const spread = dimension === 'temperature' ? 1.05 : 1.4;
  const [low, high] = middle > 0 ? [middle / spread, middle * spread] : [middle * spread, middle / spread];
  const near = real(low, high).map((value) => within(parameter, value));
  const usual = parameter.default === undefined ? near : fc.oneof(near, near, fc.constant(parameter.default));
  return fc.oneof(
    { arbitrary: usual, weight: 100 - strays },
    { arbitrary: stray(parameter), weight: strays },
  );
}

/** Mostly the usual number: of equal cylinders each costs as much as the first. */
function counted({ min, max, default: preset }: CountParameter, { strays }: Manner): Arbitrary<number> {
  const any = fc.integer({ min, max });
  if (preset === undefined) return any;
  return fc.oneof(
    { arbitrary: fc.constant(preset), weight: 4 * (100 - strays) },
    { arbitrary: any, weight: 100 },
  );
}

/** As far from top dead centre as a scenario may write. */
const FARTHEST_ANGLE = 4 * Math.PI;

const anyPosition: Arbitrary<CrankPosition> = fc.oneof(
  fc.record({ by: fc.constant('angle' as const), angle: real(-FARTHEST_ANGLE, FARTHEST_ANGLE) }),
  fc.record({
    by: fc.constantFrom('outward stroke' as const, 'return stroke' as const),
    fraction: fc.oneof(fc.constantFrom(0, 1), real(0, 1)),
  }),
);

function nearPosition(example: string): Arbitrary<CrankPosition> {
  const { value } = must(parseCrankPosition(example, example), example);
  if (value.by === 'angle') return real(-0.25, 0.25).map((off) => ({ ...value, angle: value.angle + off }));
  return real(-0.3, 0.3).map((off) => ({
    ...value,
    fraction: Math.min(1, Math.max(0, value.fraction + off)),
  }));
}

const position = (example: string, { strays }: Manner): Arbitrary<CrankPosition> =>
  fc.oneof(
    { arbitrary: nearPosition(example), weight: 100 - strays },
    { arbitrary: anyPosition, weight: strays },
  );

/** The example formula, its result scaled. */
function formula(parameter: FormulaParameter, { size }: Manner): Arbitrary<(x: number) => number> {
  const { example, variable, variablePerSi, result } = parameter;
  const scale = size ** (sizePower[result] ?? 0);
  return real(0.5, 2).map((factor) => {
    const text = `${factor * scale} * (${example})`;
    const { value } = must(compileFormula(text, variable), text);
    return (x) => value(variablePerSi * x);
  });
}

/** A column of zeros but for one rounded hump, somewhere in the period. */
const hump = ({ max }: TableColumn, rows: number): Arbitrary<number[]> =>
  fc
    .tuple(fc.nat(rows - 1), fc.integer({ min: 5, max: rows - 5 }), real(1e-4, 1e-2))
    .map(([from, wide, share]) =>
      Array.from({ length: rows + 1 }, (_, i) => {
        const since = (((i - from) % rows) + rows) % rows;
        return since >= wide ? 0 : share * max * Math.sin((Math.PI * since) / wide) ** 2;
      }),
    );

/** Few, so that a contract can look between the rows. */
const TABLE_ROWS = 24;

function table({ argument, columns }: TableParameter): Arbitrary<Table> {
  const { min, max } = argument;
  const places = Array.from({ length: TABLE_ROWS + 1 }, (_, i) => min + ((max - min) * i) / TABLE_ROWS);
  const humps = Object.entries(columns).map(([name, own]) => [name, hump(own, TABLE_ROWS)] as const);
  return fc
    .record(Object.fromEntries(humps))
    .map((values) => ({ file: 'any.csv', argument: places, columns: values }));
}

const among = (words: readonly string[]): Arbitrary<string> => fc.constantFrom(...words);

/** A gap mostly: the tables of fits do not know engines of every size. */
function clearance({ max, words, example, doc }: ClearanceParameter, manner: Manner): Arbitrary<Clearance> {
  const { holes, shafts, grades, boreFinishes, rodFinishes } = words;
  const graded = (letters: readonly string[]) =>
    fc.tuple(among(letters), among(grades)).map((s) => s.join(''));
  const gap = measured(quantity('length', { min: 0, max }, example, doc), manner);
  const fit = fc.record({ by: fc.constant('fit' as const), hole: graded(holes), shaft: graded(shafts) });
  const finishes = { bore: among(boreFinishes), rod: among(rodFinishes) };
  return fc.oneof(
    { arbitrary: gap.map((own) => ({ by: 'gap' as const, gap: own })), weight: 4 },
    { arbitrary: fit, weight: 1 },
    { arbitrary: fc.record({ by: fc.constant('process' as const), ...finishes }), weight: 1 },
  );
}

function leaf(parameter: LeafParameter, manner: Manner): Arbitrary<unknown> {
  switch (parameter.type) {
    case 'quantity':
    case 'number':
      return measured(parameter, manner);
    case 'count':
      return counted(parameter, manner);
    case 'choice':
      return fc.constantFrom(...parameter.choices);
    case 'text':
      return fc.string({ maxLength: Math.min(20, parameter.maxLength) });
    case 'formula':
      return formula(parameter, manner);
    case 'crank position':
      return position(parameter.example, manner);
    case 'table':
      return table(parameter);
    case 'clearance':
      return clearance(parameter, manner);
    case 'readings':
      throw new Error('no part of an engine takes readings');
  }
}

/** One kind of a family with values; they may still be an impossible combination. */
function arbitraryPart<Context, Part>(family: Family<Context, Part>, manner: Manner) {
  return fc.oneof(
    ...family.kinds.map((kind) => arbitraryValues(kind.parameters, manner).map((own) => kind.choose(own))),
  );
}

function arbitraryValue(parameter: Parameter, manner: Manner): Arbitrary<unknown> {
  switch (parameter.type) {
    case 'optional':
      return fc.option(leaf(parameter.parameter, manner), { nil: undefined });
    case 'group': {
      const inner = arbitraryValues(parameter.parameters, manner);
      return parameter.optional ? fc.option(inner, { nil: undefined }) : inner;
    }
    case 'part':
      return arbitraryPart(parameter.family as Family<unknown, unknown>, manner);
    case 'part list':
      return fc.array(arbitraryPart(parameter.family as Family<unknown, unknown>, manner), { maxLength: 3 });
    case 'text list':
      return fc.array(fc.string({ minLength: 1 }), { minLength: parameter.min, maxLength: parameter.max });
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
      return leaf(parameter, manner);
    case 'settings':
      throw new Error('no part of an engine takes values by their paths');
  }
}

/** A value for every parameter of a table. */
export function arbitraryValues(
  parameters: Parameters,
  manner: Manner,
): Arbitrary<Readonly<Record<string, unknown>>> {
  return fc.record(
    Object.fromEntries(
      Object.entries(parameters).map(([key, parameter]) => [key, arbitraryValue(parameter, manner)]),
    ),
  );
}

/** Refusals in a row after which no more is to be hoped for. */
const PATIENCE = 5000;

/** Only what passes a check; an error, not an endless search, when hardly anything does. */
export function passing<T>(
  values: Arbitrary<T>,
  isPossible: (value: T) => boolean,
  what: string,
): Arbitrary<T> {
  let refused = 0;
  return values.filter((value) => {
    refused = isPossible(value) ? 0 : refused + 1;
    if (refused > PATIENCE)
      throw new Error(`values about the examples of ${what} hardly ever pass its checks`);
    return refused === 0;
  });
}
