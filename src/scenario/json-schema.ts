/**
 * The JSON Schema (draft-07, which editors know best) of a description: completion and first checks while typing.
 * The reader of this room stays the judge; a schema knows shapes and patterns, not units and ranges of quantities.
 */
import type { AnyKind } from '../kinds/kind.ts';
import type {
  ClearanceParameter,
  LeafParameter,
  NumberParameter,
  Parameter,
  Parameters,
  PartListParameter,
  PartParameter,
  QuantityParameter,
} from '../kinds/parameter.ts';
import { formatQuantity } from '../quantity/format.ts';
import { expectation, isLeaf, kindsOf, mayBeAbsent } from './expectation.ts';
import { longestEntry } from './read-text-list.ts';

/** A JSON Schema of draft 07, ready for `JSON.stringify`. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** Shapes, choices and patterns of a description for an editor; it knows no ranges of quantities, `readScenario` does. */
export function scenarioJsonSchema(parameters: Parameters, title: string): JsonSchema {
  return { $schema: 'http://json-schema.org/draft-07/schema#', title, ...groupSchema(parameters) };
}

function groupSchema(parameters: Parameters, fixed: Readonly<Record<string, JsonSchema>> = {}): JsonSchema {
  const entries = Object.entries(parameters);
  const required = entries.filter(([, parameter]) => !mayBeAbsent(parameter)).map(([key]) => key);
  return {
    type: 'object',
    properties: { ...fixed, ...Object.fromEntries(entries.map(([key, own]) => [key, schemaOf(own)])) },
    required: [...Object.keys(fixed), ...required],
    additionalProperties: false,
  };
}

function schemaOf(parameter: Parameter): JsonSchema {
  if (isLeaf(parameter)) return { description: description(parameter), ...leafSchema(parameter) };
  switch (parameter.type) {
    case 'optional':
      return schemaOf(parameter.parameter);
    case 'group':
      return { description: parameter.doc, ...groupSchema(parameter.parameters) };
    case 'part':
      return { description: parameter.doc, ...partSchema(parameter) };
    case 'text list': {
      const { doc, min, max, example } = parameter;
      const items = { type: ['string', 'number'], maxLength: longestEntry, examples: [example] };
      return { description: doc, type: 'array', minItems: min, maxItems: max, items };
    }
    case 'part list': {
      const { doc, maxLength } = parameter;
      return { description: doc, type: 'array', maxItems: maxLength, items: partSchema(parameter) };
    }
    case 'settings': {
      const { doc, most, example, needed } = parameter;
      const [path, value] = example;
      const values = { type: ['string', 'number'] };
      const size = { maxProperties: most, minProperties: needed ? 1 : 0 };
      return {
        description: doc,
        type: 'object',
        ...size,
        additionalProperties: values,
        examples: [{ [path]: value }],
      };
    }
  }
}

const description = (parameter: LeafParameter): string =>
  `${parameter.doc} Expected: ${expectation(parameter)}.`;

const partSchema = (parameter: PartParameter | PartListParameter): JsonSchema => ({
  oneOf: kindsOf(parameter).map(kindSchema),
});

const kindSchema = ({ kind, doc, parameters }: AnyKind<unknown, unknown>): JsonSchema => ({
  description: doc,
  ...groupSchema(parameters, { kind: { const: kind } }),
});

const number = String.raw`[+\-−]?(\d+\.?\d*|\.\d+)([eE][+\-]?\d+)?`;
const pressure = String.raw`\s*[^\d\s.,].*(gauge|absolute|abs|\([ga]\)|(bar|psi|PSI)\s?[ga])`;
const crankPosition = String.raw`\s*(%\s*of\s+(the\s+)?((outward|return)\s+)?stroke|[^\d\s.,%].*)`;

function leafSchema(parameter: LeafParameter): JsonSchema {
  switch (parameter.type) {
    case 'quantity':
      return quantitySchema(parameter);
    case 'number':
      return numberSchema(parameter);
    case 'count': {
      const { min, max } = parameter;
      return { type: 'integer', minimum: min, maximum: max, ...preset(parameter.default) };
    }
    case 'choice':
      return { enum: parameter.choices, ...preset(parameter.default) };
    case 'text':
      return { type: ['string', 'number'], maxLength: parameter.maxLength, ...preset(parameter.default) };
    case 'formula':
      return { type: ['string', 'number'], maxLength: 300, examples: [parameter.example] };
    case 'crank position':
      return { type: 'string', pattern: `^${number}${crankPosition}$`, examples: [parameter.example] };
    case 'table':
    case 'readings':
      return { type: 'string', pattern: String.raw`\.[cC][sS][vV]$`, examples: [parameter.example] };
    case 'clearance':
      return clearanceSchema(parameter);
  }
}

const preset = (value: number | string | undefined): JsonSchema =>
  value === undefined ? {} : { default: value };

function quantitySchema({ dimension, example, default: value }: QuantityParameter): JsonSchema {
  const unit = dimension === 'pressure' ? pressure : String.raw`\s*[^\d\s.,].*`;
  const shown = value === undefined ? undefined : formatQuantity(value, dimension, { digits: 6 });
  return { type: 'string', pattern: `^${number}${unit}$`, examples: [example], ...preset(shown) };
}

function clearanceSchema({ words, example }: ClearanceParameter): JsonSchema {
  const pair = (left: readonly string[], right: readonly string[]): string =>
    String.raw`(${left.join('|')})\s*/\s*(${right.join('|')})`;
  const gap = String.raw`${number}\s*[^\d\s.,].*`;
  const graded = (letters: readonly string[]): string[] =>
    letters.map((letter) => `${letter}(${words.grades.join('|')})`);
  const fit = String.raw`([Øø⌀]?\s*${number}\s*)?${pair(graded(words.holes), graded(words.shafts))}`;
  const finishes = pair(words.boreFinishes, words.rodFinishes);
  const examples = [example, 'H7/g6', 'reamed / turned'];
  return { type: 'string', pattern: `^(${gap}|${fit}|${finishes})$`, examples };
}

function numberSchema({ min, max, example, default: value }: NumberParameter): JsonSchema {
  return {
    anyOf: [
      { type: 'number', minimum: min, maximum: max },
      { type: 'string', pattern: String.raw`^${number}\s*%$` },
    ],
    examples: [example],
    ...preset(value),
  };
}
