/**
 * Units by mathjs, with the trade's additions and the spellings that people really type.
 * Of mathjs only the unit table is taken; nothing here evaluates text.
 */
import { create, createUnitDependencies, factory, unitDependencies, type Unit } from 'mathjs';
import type { Dimension } from '../kinds/parameter.ts';
import { pow } from '../numerics/elementary/power.ts';
import { dimensions } from './dimensions.ts';
import { withoutNoise } from './number.ts';

/** A function of plain numbers, by the name under which mathjs asks for it. */
const onNumbers = (name: string, f: (a: number, b: number) => unknown) => factory(name, [], () => f);

/**
 * The arithmetic of units, of plain numbers and no others: that of mathjs, which knows fractions and matrices, takes ten times
 * as long to set up as all there is to read. And powers are alike on every machine.
 */
const arithmetic = {
  createAbs: onNumbers('abs', Math.abs),
  createAddScalar: onNumbers('addScalar', (a, b) => a + b),
  createSubtractScalar: onNumbers('subtractScalar', (a, b) => a - b),
  createMultiplyScalar: onNumbers('multiplyScalar', (a, b) => a * b),
  createDivideScalar: onNumbers('divideScalar', (a, b) => a / b),
  createPow: onNumbers('pow', pow),
  createEqual: onNumbers('equal', (a, b) => a === b),
  createFix: onNumbers('fix', Math.trunc),
  createRound: onNumbers('round', Math.round),
  createNumber: onNumbers('number', Number),
  createIsNumeric: onNumbers('isNumeric', (a) => typeof a === 'number'),
};

const math = create({ ...unitDependencies, ...createUnitDependencies, ...arithmetic });

math.createUnit({
  rev: '360 deg',
  rpm: { definition: '6 deg/s', aliases: ['RPM'] },
  cfm: { definition: '1 ft^3/min', aliases: ['CFM'] },
  thou: '0.001 in',
  in3: '1 in^3',
  ft3: '1 ft^3',
  PSI: '1 psi',
  Nm: { definition: '1 N m', prefixes: 'short' },
});

const names = Object.keys(dimensions) as Dimension[];

/** Spellings in print, and how mathjs wants them. */
const spellings: readonly (readonly [RegExp, string])[] = [
  [/[µμ]/gu, 'u'],
  [/°\s?C|℃/gu, 'degC'],
  [/°\s?F|℉/gu, 'degF'],
  [/°/gu, 'deg'],
  [/²/gu, '^2'],
  [/³/gu, '^3'],
  [/[·⋅\s]+/gu, ' '],
];

/** A value with its unit as mathjs keeps it, or `undefined` for a unit that does not exist. */
export function measured(value: number, unitText: string): Unit | undefined {
  const text = spellings.reduce((unit, [print, plain]) => unit.replace(print, plain), unitText);
  if (!/^[a-zA-Z(]/u.test(text)) return undefined;
  try {
    return math.unit(value, text);
  } catch {
    // mathjs reports an unknown unit by throwing.
    return undefined;
  }
}

const siUnits = new Map(names.map((name) => [name, dimensions[name].si.map((si) => math.unit(si))]));

/** The SI value, or `undefined` if the quantity has another dimension. */
export function inSi(quantity: Unit, dimension: Dimension): number | undefined {
  const si = siUnits.get(dimension)?.find((unit) => quantity.equalBase(unit));
  return si === undefined ? undefined : withoutNoise(quantity.toNumber(si.formatUnits()));
}

/** What a quantity is, in words: "a mass". */
export function nameOf(quantity: Unit): string | undefined {
  const dimension = names.find((name) => inSi(quantity, name) !== undefined);
  return dimension === undefined ? undefined : dimensions[dimension].name;
}
