/** A place in the turn of the crank: "130 deg" after top dead centre, "35 % of stroke", "90 % of return stroke". */
import type { CrankPosition } from '../kinds/parameter.ts';
import { parsePureNumber, readNumber, type LeadingNumber } from './number.ts';
import { parseQuantity } from './parse-quantity.ts';
import { refusal, write, type Refusal } from './refusal.ts';

export interface ParsedCrankPosition {
  readonly ok: true;
  readonly value: CrankPosition;
}

const largestAngle = 4 * Math.PI;
const ofStroke = /^(.*%)\s*of\s+(?:the\s+)?(?:(outward|return)\s+)?stroke$/u;

export function parseCrankPosition(text: string, example = '35 % of stroke'): ParsedCrankPosition | Refusal {
  const number = readNumber(text, example);
  if (!number.ok) return number;
  const stroke = ofStroke.exec(text.trim());
  if (stroke !== null) return strokePosition(stroke[1] ?? '', stroke[2], example);
  if (number.rest === '') return noUnit(number);
  if (number.rest === '%')
    return refusal('a percentage of what is not said', write(...strokes(number.digits)));
  return anglePosition(text, example);
}

const strokes = (digits: string): string[] => [`${digits} % of stroke`, `${digits} % of return stroke`];

function noUnit({ value, digits }: LeadingNumber): Refusal {
  const maybeShare = value >= 0 && value <= 100 ? strokes(digits) : [];
  return refusal('no unit', write(`${digits} deg`, ...maybeShare));
}

function strokePosition(percentage: string, stroke: string | undefined, example: string) {
  const fraction = parsePureNumber(percentage, example);
  if (!fraction.ok) return fraction;
  if (fraction.value < 0 || fraction.value > 1)
    return refusal('outside the stroke', 'A share of a stroke lies between 0 % and 100 %.');
  const by = stroke === 'return' ? 'return stroke' : 'outward stroke';
  return { ok: true, value: { by, fraction: fraction.value } } as const;
}

function anglePosition(text: string, example: string) {
  const angle = parseQuantity(text, 'angle', example);
  if (!angle.ok) return angle;
  if (Math.abs(angle.value) > largestAngle)
    return refusal('more than two turns', 'A crank angle lies between -720 deg and 720 deg.');
  return { ok: true, value: { by: 'angle', angle: angle.value } } as const;
}
