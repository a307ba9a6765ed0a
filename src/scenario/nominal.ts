/** What stands at a path of a scenario, as far as a tolerance needs to know. */
import { parseQuantity } from '../quantity/parse-quantity.ts';
import type { Nominal } from '../study/tolerances/tolerance.ts';
import type { Override } from './override.ts';
import type { ScenarioReader } from './read-scenario.ts';

type Reader = Extract<ScenarioReader, { readonly ok: true }>;

/** Finds the text at a path and, of a clearance, the diameter it belongs to. */
export function nominalAt(reader: Reader, overrides: readonly Override[], path: string): Nominal {
  const given = reader.given(overrides).find((own) => own.path === path);
  const text = given?.text ?? '';
  if (given?.parameter.type !== 'clearance') return { text };
  const { diameter } = given.parameter;
  const where = diameter.includes('.') ? diameter.split('.') : [...path.split('.').slice(0, -1), diameter];
  const length = lengthOf(reader.textAt(overrides, where) ?? '');
  return length === undefined ? { text } : { text, diameter: length };
}

/** A length as it is written [m]. */
export function lengthOf(text: string): number | undefined {
  const length = parseQuantity(text, 'length');
  return length.ok ? length.value : undefined;
}
