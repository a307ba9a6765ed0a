/**
 * A dimensioned value from a scenario: "50 mm", "4 bar gauge", "60 psig", "20 °C". The unit is never guessed, and a
 * pressure always says whether it is counted from the atmosphere (gauge) or from vacuum (absolute).
 */
import type { Dimension } from '../kinds/parameter.ts';
import { dimensions } from './dimensions.ts';
import { readNumber, type LeadingNumber } from './number.ts';
import { refusal, write, type Refusal } from './refusal.ts';
import { inSi, measured, nameOf } from './units.ts';

export type PressureReference = 'gauge' | 'absolute';

export interface ParsedQuantity {
  readonly ok: true;
  /** SI; of a pressure counted from `reference`. */
  readonly value: number;
  /** Pressures only. */
  readonly reference?: PressureReference;
}

/** Reads a value with its unit. `example` is one valid text; a hint borrows its unit. */
export function parseQuantity(
  text: string,
  dimension: Dimension,
  example: string = dimensions[dimension].example,
): ParsedQuantity | Refusal {
  const number = readNumber(text, example);
  if (!number.ok) return number;
  if (number.rest === '') return refusal('no unit', write(`${number.digits} ${unitOf(example)}`));
  return dimension === 'pressure'
    ? parsePressure(number, example)
    : parseMeasure(number.value, number.rest, dimension, example);
}

function unitOf(example: string): string {
  const number = readNumber(example, example);
  return number.ok ? number.rest : example;
}

function parseMeasure(
  value: number,
  unit: string,
  dimension: Dimension,
  example: string,
): ParsedQuantity | Refusal {
  const quantity = measured(value, unit);
  if (quantity === undefined) return refusal(`unknown unit "${unit}"`, write(example));
  const si = inSi(quantity, dimension);
  if (si === undefined)
    return refusal(nameOf(quantity) ?? `not ${dimensions[dimension].name}`, write(example));
  return Number.isFinite(si) ? { ok: true, value: si } : refusal('too large', write(example));
}

const referenceWord = /^(.*?)\s*(?:\b(gauge|absolute|abs)|\((g|a)\)|(?<=bar|psi|PSI)\s?(g|a))$/u;

function parsePressure(number: LeadingNumber, example: string): ParsedQuantity | Refusal {
  const [, unit = number.rest, ...words] = referenceWord.exec(number.rest) ?? [];
  const word = words.find(Boolean);
  const measure = parseMeasure(number.value, unit, 'pressure', example);
  if (!measure.ok) return measure;
  if (word !== undefined) return { ...measure, reference: word.startsWith('g') ? 'gauge' : 'absolute' };
  const references = example.endsWith('absolute') ? ['absolute'] : ['gauge', 'absolute'];
  const texts = references.map((reference) => `${number.digits} ${unit} ${reference}`);
  return refusal('neither gauge nor absolute', write(...texts));
}
