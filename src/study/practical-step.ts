/**
 * What a builder would try next to a value: one practical step up and one down. Sizes and pressures by about a tenth,
 * rounded to 1, 2 or 5 in their own unit; angles by 5 degrees and places in the stroke by 5 %; a fit by the next letter,
 * finishes by the next process. Common practice, no source.
 */
import type { ClearanceParameter, LeafParameter } from '../kinds/parameter.ts';
import { log10 } from '../numerics/elementary/logarithm.ts';
import { pow } from '../numerics/elementary/power.ts';
import { parseClearance } from '../quantity/clearance.ts';
import { readNumber } from '../quantity/number.ts';
import { rampText } from './variations/variation.ts';

export interface Steps {
  readonly down?: string;
  readonly up?: string;
  /** Ways that are neither. */
  readonly others: readonly string[];
}

const none: Steps = { others: [] };

export function practicalSteps(text: string, parameter: LeafParameter): Steps {
  switch (parameter.type) {
    case 'choice':
      return { others: parameter.choices.filter((own) => own !== text) };
    case 'clearance':
      return clearanceSteps(text, parameter);
    case 'count':
      return stepsBy(text, 1);
    case 'crank position':
      return stepsBy(text, 5);
    case 'quantity':
      return stepsBy(text, parameter.dimension === 'angle' ? 5 : undefined);
    case 'number':
      return stepsBy(text, undefined);
    case 'text':
    case 'formula':
    case 'table':
    case 'readings':
      return none;
  }
}

const TENTH = 0.1;

function stepsBy(text: string, fixed: number | undefined): Steps {
  const number = readNumber(text, '');
  if (!number.ok || (number.value === 0 && fixed === undefined)) return none;
  const step = fixed ?? roundedDown(Math.abs(number.value) * TENTH * 1.0001);
  return {
    down: rampText(number.value - step, number.rest),
    up: rampText(number.value + step, number.rest),
    others: [],
  };
}

/** The largest of 1, 2, 5 times a power of ten that is not above. */
function roundedDown(most: number): number {
  const power = pow(10, Math.floor(log10(most)));
  return ([5, 2, 1].find((digit) => digit * power <= most) ?? 1) * power;
}

/** Down is a closer fit. */
function clearanceSteps(text: string, { words, example }: ClearanceParameter): Steps {
  const own = parseClearance(text, words, example);
  if (!own.ok) return none;
  const { value } = own;
  if (value.by === 'gap') return stepsBy(text, undefined);
  if (value.by === 'fit') {
    const letter = words.shafts.indexOf(value.shaft.slice(0, 1));
    const fit = (other: string | undefined): string | undefined =>
      other && `${value.hole}/${other}${value.shaft.slice(1)}`;
    return stepsTo(fit(words.shafts[letter + 1]), fit(words.shafts[letter - 1]));
  }
  const [bore, rod] = [words.boreFinishes.indexOf(value.bore), words.rodFinishes.indexOf(value.rod)];
  const finishes = (by: number): string | undefined => {
    const [b, r] = [words.boreFinishes[bore + by], words.rodFinishes[rod + by]];
    return b === undefined && r === undefined ? undefined : `${b ?? value.bore} / ${r ?? value.rod}`;
  };
  return stepsTo(finishes(1), finishes(-1));
}

const stepsTo = (down: string | undefined, up: string | undefined): Steps => ({
  ...(down === undefined ? {} : { down }),
  ...(up === undefined ? {} : { up }),
  others: [],
});
