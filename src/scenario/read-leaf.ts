/** One value from the text of one scalar: unit, range and spelling checked, SI and absolute afterwards. */
import type {
  ChoiceParameter,
  ClearanceParameter,
  CountParameter,
  FormulaParameter,
  LeafParameter,
  QuantityParameter,
  TextParameter,
} from '../kinds/parameter.ts';
import { parseClearance } from '../quantity/clearance.ts';
import { parseCrankPosition } from '../quantity/crank-position.ts';
import { compileFormula } from '../quantity/formula.ts';
import { parsePureNumber } from '../quantity/number.ts';
import { parseQuantity } from '../quantity/parse-quantity.ts';
import { exampleOf } from './expectation.ts';
import { nearest } from './nearest.ts';

/** Pressure of the surroundings, Pa absolute; `undefined` where gauge pressures mean nothing. */
export type Atmosphere = number | undefined;

export type LeafReading =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly reason?: string; readonly hint?: string };

export function readLeaf(parameter: LeafParameter, text: string, atmosphere: Atmosphere): LeafReading {
  switch (parameter.type) {
    case 'quantity':
      return readQuantity(parameter, text, atmosphere);
    case 'number': {
      const number = parsePureNumber(text, parameter.example);
      return number.ok ? within(number.value, parameter) : number;
    }
    case 'count':
      return readCount(parameter, text);
    case 'choice':
      return readChoice(parameter, text);
    case 'text':
      return readText(parameter, text);
    case 'formula':
      return readFormula(parameter, text);
    case 'crank position':
      return parseCrankPosition(text, parameter.example);
    case 'table':
    case 'readings':
      return readFileName(text);
    case 'clearance':
      return readClearance(parameter, text);
  }
}

function readQuantity(parameter: QuantityParameter, text: string, atmosphere: Atmosphere): LeafReading {
  const parsed = parseQuantity(text, parameter.dimension, parameter.example);
  if (!parsed.ok) return parsed;
  if (parsed.reference !== 'gauge') return within(parsed.value, parameter);
  if (atmosphere === undefined)
    return {
      ok: false,
      reason: 'gauge, with no pressure of the room to count from',
      hint: 'Write it as an absolute pressure.',
    };
  return within(parsed.value + atmosphere, parameter);
}

export type NumberReading =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly reason: string };

interface Limits {
  readonly min: number;
  readonly max: number;
}

/** A value that misses a limit by rounding alone, as "360 deg" may, is put on it. */
export function within(value: number, { min, max }: Limits): NumberReading {
  const inside = Math.min(Math.max(value, min), max);
  if (Math.abs(value - inside) <= 1e-12 * Math.abs(inside)) return { ok: true, value: inside };
  return { ok: false, reason: value < min ? 'too small' : 'too large' };
}

function readClearance({ words, example, max }: ClearanceParameter, text: string): LeafReading {
  const parsed = parseClearance(text, words, example);
  if (!parsed.ok || parsed.value.by !== 'gap') return parsed;
  const gap = within(parsed.value.gap, { min: 0, max });
  return gap.ok ? { ok: true, value: { by: 'gap', gap: gap.value } } : gap;
}

function readCount(parameter: CountParameter, text: string): LeafReading {
  const number = parsePureNumber(text, exampleOf(parameter));
  if (!number.ok) return number;
  return Number.isInteger(number.value) ? within(number.value, parameter) : { ok: false };
}

function readChoice({ choices }: ChoiceParameter, text: string): LeafReading {
  if (choices.includes(text)) return { ok: true, value: text };
  return { ok: false, ...didYouMean(text, choices) };
}

export function didYouMean(word: string, valid: readonly string[]): { readonly hint?: string } {
  const meant = nearest(word, valid);
  return meant === undefined ? {} : { hint: `Did you mean "${meant}"?` };
}

function readText({ maxLength }: TextParameter, text: string): LeafReading {
  const trimmed = text.trim();
  if (trimmed.length > maxLength) return { ok: false, reason: `${trimmed.length} characters` };
  return { ok: true, value: trimmed };
}

/** The parts ask in SI; the formula is written in the unit its variable is named after. */
function readFormula({ variable, variablePerSi }: FormulaParameter, text: string): LeafReading {
  const formula = compileFormula(text, variable);
  if (!formula.ok) return formula;
  const { value } = formula;
  return { ok: true, value: (si: number) => value(si * variablePerSi) };
}

const longestFileName = 200;

/** Of a table only the name stands in the scenario; what the file holds is another matter. */
function readFileName(text: string): LeafReading {
  const name = text.trim();
  if (name.length > longestFileName) return { ok: false, reason: `${name.length} characters` };
  return /\.csv$/iu.test(name) ? { ok: true, value: name } : { ok: false, reason: 'not named ".csv"' };
}
