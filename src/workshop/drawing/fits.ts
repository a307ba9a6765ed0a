/** Sizes with their limits, as they are written at a dimension. */
import { stepOf, toleranceWidth, type Grade } from '../../parts/fits/tolerance-grades.ts';
import { mm } from './words.ts';

/** A hole made to a grade from its nominal size upwards: "Ø12 H7 (+0.018/0)". */
export function holeSize(diameter: number, grade: Grade): string {
  const step = stepOf(diameter);
  const limits = step < 0 ? '' : ` (+${(toleranceWidth(grade, step) / 1e3).toFixed(3)}/0)`;
  return `Ø${mm(diameter)} H${grade}${limits}`;
}
