/** Decimal numbers as people type them, and pure numbers that may be given in percent. */
import { refusal, write, type Refusal } from './refusal.ts';

export interface LeadingNumber {
  readonly ok: true;
  readonly value: number;
  /** The number as written. */
  readonly digits: string;
  /** What follows it, trimmed. */
  readonly rest: string;
}

const maxLength = 80;
const leading = /^([+\-−]?)((?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)(.*)$/su;
const decimalComma = /^([+\-−]?\d+),(\d+)(.*)$/su;

/** The number at the beginning of a text, or why there is none. */
export function readNumber(text: string, example: string): LeadingNumber | Refusal {
  const trimmed = text.trim();
  if (trimmed.length > maxLength) return refusal('too long', write(example));
  const comma = decimalComma.exec(trimmed);
  if (comma !== null) return commaRefusal(comma);
  const match = leading.exec(trimmed);
  if (match === null) return refusal('not a number', write(example));
  const [, sign = '', digits = '', rest = ''] = match;
  const value = Number(digits) * (sign === '-' || sign === '−' ? -1 : 1);
  if (!Number.isFinite(value)) return refusal('too large', write(example));
  return { ok: true, value, digits: sign + digits, rest: rest.trim() };
}

function commaRefusal([, whole = '', decimals = '', rest = '']: RegExpExecArray): Refusal {
  const withPoint = `${whole}.${decimals}${rest}`;
  const texts = decimals.length === 3 ? [withPoint, whole + decimals + rest] : [withPoint];
  return refusal('a decimal comma', write(...texts));
}

/** A pure number: "0.06" or "6 %". */
export function parsePureNumber(
  text: string,
  example: string,
): { readonly ok: true; readonly value: number } | Refusal {
  const number = readNumber(text, example);
  if (!number.ok) return number;
  if (number.rest === '') return { ok: true, value: number.value };
  if (number.rest === '%') return { ok: true, value: withoutNoise(number.value * 0.01) };
  return refusal('more than a plain number', write(number.digits, `${number.digits} %`));
}

/**
 * Drops the last bit or two that a unit factor adds, so that "30 µm" is the same number as 3e-5 and limits compare as
 * they are written. A value that is not a short decimal is left as it is.
 */
export function withoutNoise(value: number): number {
  const rounded = Number(value.toPrecision(12));
  return Math.abs(rounded - value) <= 2 * Number.EPSILON * Math.abs(value) ? rounded : value;
}
