/**
 * What a part says about each of its parameters: dimension, range, default and meaning.
 *
 * Everything a user meets is derived from these descriptions: validation of scenario files, the JSON Schema,
 * the reference pages, the labels of a report. Values are SI: metres, pascals absolute, kelvins, radians.
 */

export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'density'
  | 'time'
  | 'angle'
  | 'rotational speed'
  | 'pressure'
  | 'pressure difference'
  | 'temperature'
  | 'force'
  | 'force per pressure'
  | 'torque'
  | 'torque per speed'
  | 'torque per speed squared'
  | 'moment of inertia'
  | 'dynamic viscosity'
  | 'volume flow'
  | 'sonic conductance'
  | 'heat transfer coefficient';

/** How a builder finds the value out on a real engine, in whole sentences. */
export interface Measurable {
  readonly measure?: string;
}

/** A dimensioned value. In a scenario it always carries its unit; pressures also say gauge or absolute. */
export interface QuantityParameter extends Measurable {
  readonly type: 'quantity';
  readonly dimension: Dimension;
  /** Smallest and largest valid value, SI. Pressure limits are absolute. */
  readonly min: number;
  readonly max: number;
  /** SI. A parameter without a default must be given, unless it is `optional`. */
  readonly default?: number;
  readonly doc: string;
  /** How one would write it, for messages: "50 mm". */
  readonly example: string;
}

/** A pure number: a ratio, a coefficient. A percentage such as "6 %" is accepted too. */
export interface NumberParameter extends Measurable {
  readonly type: 'number';
  readonly min: number;
  readonly max: number;
  readonly default?: number;
  readonly doc: string;
  readonly example: string;
}

export interface CountParameter extends Measurable {
  readonly type: 'count';
  readonly min: number;
  readonly max: number;
  readonly default?: number;
  readonly doc: string;
}

export interface ChoiceParameter<C extends string = string> {
  readonly type: 'choice';
  readonly choices: readonly C[];
  readonly default?: C;
  readonly doc: string;
}

/** Free text such as a title. Inert everywhere: never executed, always escaped. */
export interface TextParameter {
  readonly type: 'text';
  readonly maxLength: number;
  readonly default?: string;
  readonly doc: string;
}

/** A formula in one variable, compiled from a small safe grammar. The result is in SI. */
export interface FormulaParameter extends Measurable {
  readonly type: 'formula';
  /** The variable as the user writes it, e.g. "rpm". */
  readonly variable: string;
  /** Factor from the SI argument to that variable, e.g. rad/s -> rpm. */
  readonly variablePerSi: number;
  readonly result: Dimension;
  readonly doc: string;
  readonly example: string;
}

/** A place in the turn: crank degrees, or a percentage of the outward or the return stroke. */
export interface CrankPositionParameter extends Measurable {
  readonly type: 'crank position';
  readonly default?: CrankPosition;
  readonly doc: string;
  readonly example: string;
}

/** Angle after top dead centre in radians (may be negative), or the share of a stroke the piston has covered. */
export type CrankPosition =
  | { readonly by: 'angle'; readonly angle: number }
  | { readonly by: 'outward stroke'; readonly fraction: number }
  | { readonly by: 'return stroke'; readonly fraction: number };

/** A column of numbers in a file. Name and unit make its header: "admission_area_mm2". */
export interface TableColumn {
  readonly dimension: Dimension;
  /** As the header spells it; the numbers below it are in this unit. */
  readonly unit: string;
  /** Smallest and largest valid value, SI. */
  readonly min: number;
  readonly max: number;
}

/** Quantities over one period, row by row, in a CSV file of its own that the scenario names. */
export interface TableParameter<C extends string = string> extends Measurable {
  readonly type: 'table';
  /**
   * The first column. It ascends over the whole period from its smallest to its largest value, in steps no larger than
   * `largestStep` [SI]; the last row repeats the first.
   */
  readonly argument: TableColumn & { readonly name: string; readonly largestStep: number };
  /** The others by name, in their order. */
  readonly columns: Readonly<Record<C, TableColumn>>;
  readonly mostRows: number;
  readonly doc: string;
  /** A file name. */
  readonly example: string;
}

/** What such a file holds, SI; all columns as long as `argument`. */
export interface Table<C extends string = string> {
  /** As the scenario names it. */
  readonly file: string;
  readonly argument: readonly number[];
  readonly columns: Readonly<Record<C, readonly number[]>>;
}

/** A column of readings. The header names it with any unit of its dimension: "speed_rpm", "pressure_bar_gauge". */
export interface ReadingColumn {
  readonly dimension: Dimension;
  /** Smallest and largest valid value, SI, pressures absolute. */
  readonly min: number;
  readonly max: number;
  /** The header in the unit one would use. */
  readonly example: string;
}

/** Readings of a test, row by row, in a CSV file of its own that the sheet names; columns in any order. */
export interface ReadingsParameter<C extends string = string, O extends string = string> {
  readonly type: 'readings';
  readonly columns: Readonly<Record<C, ReadingColumn>>;
  /** Columns that may be left out. */
  readonly optionalColumns: Readonly<Record<O, ReadingColumn>>;
  /** The column that grows from row to row, if one does. */
  readonly ascending?: NoInfer<C>;
  readonly leastRows: number;
  readonly mostRows: number;
  readonly doc: string;
  /** A file name. */
  readonly example: string;
}

/** What such a file holds, SI; all columns of one length. */
export interface Readings<C extends string = string, O extends string = string> {
  /** As the sheet names it. */
  readonly file: string;
  readonly columns: Readonly<Record<C, readonly number[]>> & Readonly<Partial<Record<O, readonly number[]>>>;
}

/** The play of a rod in its bore: a radial gap, an ISO fit, or how either is finished. */
export interface ClearanceParameter extends Measurable {
  readonly type: 'clearance';
  /** Largest valid radial gap, SI; the smallest is none. */
  readonly max: number;
  readonly words: ClearanceWords;
  /** Where its nominal diameter stands: a key beside it, or with a point in it a path from the top of the scenario. */
  readonly diameter: string;
  readonly doc: string;
  /** A gap, as one would write it: "8 um". */
  readonly example: string;
}

/** What a fit or a pair of finishes may be made up of. */
export interface ClearanceWords {
  /** Letters of holes and shafts, the loosest first, and the tolerance grades of either. */
  readonly holes: readonly string[];
  readonly shafts: readonly string[];
  readonly grades: readonly string[];
  readonly boreFinishes: readonly string[];
  readonly rodFinishes: readonly string[];
}

/** Lengths in metres; the gap is radial, the nominal a diameter. */
export type Clearance =
  | { readonly by: 'gap'; readonly gap: number }
  | { readonly by: 'fit'; readonly hole: string; readonly shaft: string; readonly nominal?: number }
  | { readonly by: 'process'; readonly bore: string; readonly rod: string };

export interface GroupParameter<P extends Parameters = Parameters> {
  readonly type: 'group';
  readonly parameters: P;
  readonly optional?: boolean;
  readonly doc: string;
}

/** One part chosen from a family by its `kind`. */
export interface PartParameter<F = unknown> {
  readonly type: 'part';
  readonly family: F;
  /** Kind to use, with its own defaults, when the key is absent. */
  readonly defaultKind?: string;
  readonly doc: string;
}

/** Values of a scenario by their paths, "leaks.0.clearance: 12 um"; the scenario's own reader checks them. */
export interface SettingsParameter {
  readonly type: 'settings';
  readonly most: number;
  /** At least one has to be given. */
  readonly needed: boolean;
  readonly doc: string;
  /** A path and a value. */
  readonly example: readonly [path: string, value: string];
}

/** One of them. */
export interface Setting {
  /** Keys from the top of the scenario inwards. */
  readonly path: readonly string[];
  /** As one would write it in the scenario. */
  readonly value: string;
  /** Where it stands. */
  readonly at: { readonly file: string; readonly line: number; readonly column: number };
}

export interface PartListParameter<F = unknown> {
  readonly type: 'part list';
  readonly family: F;
  readonly maxLength: number;
  readonly doc: string;
}

/** Texts one below the other, such as the values to try. */
export interface TextListParameter {
  readonly type: 'text list';
  /** How many there may be; with a least number of none the key may be left out. */
  readonly min: number;
  readonly max: number;
  readonly doc: string;
  /** One entry. */
  readonly example: string;
}

/** A value that may be left out altogether; it is then `undefined`. */
export interface OptionalParameter<P extends LeafParameter = LeafParameter> {
  readonly type: 'optional';
  readonly parameter: P;
}

export type LeafParameter =
  | QuantityParameter
  | NumberParameter
  | CountParameter
  | ChoiceParameter
  | TextParameter
  | FormulaParameter
  | CrankPositionParameter
  | TableParameter
  | ReadingsParameter
  | ClearanceParameter;

export type Parameter =
  | LeafParameter
  | OptionalParameter
  | GroupParameter
  | PartParameter
  | PartListParameter
  | SettingsParameter
  | TextListParameter;

export type Parameters = Readonly<Record<string, Parameter>>;

/** The checked SI value that belongs to a parameter. */
export type Value<P> =
  P extends OptionalParameter<infer Q>
    ? Value<Q> | undefined
    : P extends QuantityParameter | NumberParameter | CountParameter
      ? number
      : P extends ChoiceParameter<infer C>
        ? C
        : P extends TextParameter
          ? string
          : P extends FormulaParameter
            ? (x: number) => number
            : P extends CrankPositionParameter
              ? CrankPosition
              : P extends TableParameter<infer C>
                ? Table<C>
                : P extends ReadingsParameter<infer C, infer O>
                  ? Readings<C, O>
                  : P extends ClearanceParameter
                    ? Clearance
                    : P extends SettingsParameter
                      ? readonly Setting[]
                      : P extends GroupParameter<infer G>
                        ? P extends { readonly optional: true }
                          ? Values<G> | undefined
                          : Values<G>
                        : P extends PartParameter<infer F>
                          ? ChosenFrom<F>
                          : P extends PartListParameter<infer F>
                            ? readonly ChosenFrom<F>[]
                            : P extends TextListParameter
                              ? readonly string[]
                              : never;

export type Values<P extends Parameters> = { readonly [K in keyof P]: Value<P[K]> };

type ChosenFrom<F> = F extends { readonly chosen?: infer C } ? Exclude<C, undefined> : never;
