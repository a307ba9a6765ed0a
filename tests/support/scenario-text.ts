/** A scenario that says what an engine's values are, in SI and to the last digit: to keep an engine that came up by chance. */
import { stringify } from 'yaml';
import type { Chosen } from '../../src/kinds/kind.ts';
import type { Clearance, CrankPosition, Parameter, Parameters } from '../../src/kinds/parameter.ts';
import { engineParameters, type EngineSpec } from '../../src/parts/engine-description.ts';
import { dimensions } from '../../src/quantity/dimensions.ts';
import { formulaText } from './arbitrary-values.ts';

type Texts = Record<string, unknown>;

function clearanceText(own: Clearance): string {
  switch (own.by) {
    case 'gap':
      return `${own.gap} m`;
    case 'fit':
      return `${own.hole}/${own.shaft}`;
    case 'process':
      return `${own.bore} / ${own.rod}`;
  }
}

const positionText = (own: CrankPosition): string =>
  own.by === 'angle' ? `${own.angle} rad` : `${100 * own.fraction} % of ${own.by}`;

const partTexts = ({ kind, values }: Chosen<never, unknown>, parameters: Parameters): Texts => ({
  kind,
  ...groupTexts(parameters, values),
});

interface OfKinds {
  readonly family: { readonly kinds: readonly { readonly kind: string; readonly parameters: Parameters }[] };
}

function partOf(parameter: OfKinds, part: Chosen<never, unknown>): Texts {
  const own = parameter.family.kinds.find(({ kind }) => kind === part.kind)!;
  return partTexts(part, own.parameters);
}

function valueText(parameter: Parameter, value: unknown): unknown {
  switch (parameter.type) {
    case 'quantity': {
      const unit = dimensions[parameter.dimension].si[0];
      return `${String(value)} ${unit}${parameter.dimension === 'pressure' ? ' absolute' : ''}`;
    }
    case 'number':
    case 'count':
    case 'choice':
    case 'text':
      return String(value);
    case 'formula':
      return formulaText(value as object);
    case 'crank position':
      return positionText(value as CrankPosition);
    case 'clearance':
      return clearanceText(value as Clearance);
    case 'optional':
      return valueText(parameter.parameter, value);
    case 'group':
      return groupTexts(parameter.parameters, value as Texts);
    case 'part':
      return partOf(parameter as OfKinds, value as Chosen<never, unknown>);
    case 'part list':
      return (value as Chosen<never, unknown>[]).map((part) => partOf(parameter as OfKinds, part));
    case 'table':
    case 'readings':
    case 'text list':
    case 'settings':
      throw new Error(`a ${parameter.type} is not kept`);
  }
}

function groupTexts(parameters: Parameters, values: Texts): Texts {
  const given = Object.entries(parameters).filter(([key]) => values[key] !== undefined);
  return Object.fromEntries(given.map(([key, parameter]) => [key, valueText(parameter, values[key])]));
}

export const scenarioText = (spec: EngineSpec, title: string): string =>
  stringify(groupTexts(engineParameters, { ...spec, title, notes: undefined } as Texts));
