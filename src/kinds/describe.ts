/** Short constructors for parameter descriptions, so that a part's file reads as a table. */
import type {
  ChoiceParameter,
  CountParameter,
  CrankPosition,
  CrankPositionParameter,
  Dimension,
  FormulaParameter,
  GroupParameter,
  LeafParameter,
  Measurable,
  NumberParameter,
  OptionalParameter,
  Parameters,
  PartListParameter,
  PartParameter,
  QuantityParameter,
  ReadingsParameter,
  SettingsParameter,
  TableParameter,
  TextListParameter,
  TextParameter,
} from './parameter.ts';

interface Limits {
  readonly min: number;
  readonly max: number;
  readonly default?: number;
}

const measuredBy = (measure: string | undefined): Measurable => (measure === undefined ? {} : { measure });

export const quantity = (
  dimension: Dimension,
  limits: Limits,
  example: string,
  doc: string,
  measure?: string,
): QuantityParameter => ({
  type: 'quantity',
  dimension,
  ...limits,
  example,
  doc,
  ...measuredBy(measure),
});

export const pureNumber = (
  limits: Limits,
  example: string,
  doc: string,
  measure?: string,
): NumberParameter => ({
  type: 'number',
  ...limits,
  example,
  doc,
  ...measuredBy(measure),
});

export const count = (limits: Limits, doc: string, measure?: string): CountParameter => ({
  type: 'count',
  ...limits,
  doc,
  ...measuredBy(measure),
});

export const choice = <const C extends string>(
  choices: readonly C[],
  doc: string,
  preset?: NoInfer<C>,
): ChoiceParameter<C> => ({
  type: 'choice',
  choices,
  doc,
  ...(preset === undefined ? {} : { default: preset }),
});

export const text = (maxLength: number, doc: string, preset?: string): TextParameter => ({
  type: 'text',
  maxLength,
  doc,
  ...(preset === undefined ? {} : { default: preset }),
});

export const formula = (description: Omit<FormulaParameter, 'type'>): FormulaParameter => ({
  type: 'formula',
  ...description,
});

export const crankPosition = (
  example: string,
  doc: string,
  measure?: string,
  preset?: CrankPosition,
): CrankPositionParameter => ({
  type: 'crank position',
  example,
  doc,
  ...measuredBy(measure),
  ...(preset === undefined ? {} : { default: preset }),
});

export const table = <C extends string>(description: Omit<TableParameter<C>, 'type'>): TableParameter<C> => ({
  type: 'table',
  ...description,
});

export const readings = <C extends string, O extends string = never>(
  description: Omit<ReadingsParameter<C, O>, 'type'>,
): ReadingsParameter<C, O> => ({ type: 'readings', ...description });

export const settings = (description: Omit<SettingsParameter, 'type'>): SettingsParameter => ({
  type: 'settings',
  ...description,
});

export const group = <const P extends Parameters>(doc: string, parameters: P): GroupParameter<P> => ({
  type: 'group',
  parameters,
  doc,
});

/** A group that may be left out; its value is then `undefined`. */
export const optionalGroup = <const P extends Parameters>(
  doc: string,
  parameters: P,
): GroupParameter<P> & { readonly optional: true } => ({ type: 'group', parameters, doc, optional: true });

export const optional = <P extends LeafParameter>(parameter: P): OptionalParameter<P> => ({
  type: 'optional',
  parameter,
});

export const part = <F>(family: F, doc: string, defaultKind?: string): PartParameter<F> => ({
  type: 'part',
  family,
  doc,
  ...(defaultKind === undefined ? {} : { defaultKind }),
});

export const partList = <F>(family: F, maxLength: number, doc: string): PartListParameter<F> => ({
  type: 'part list',
  family,
  maxLength,
  doc,
});

export const textList = (
  limits: { readonly min: number; readonly max: number },
  example: string,
  doc: string,
): TextListParameter => ({ type: 'text list', ...limits, example, doc });
