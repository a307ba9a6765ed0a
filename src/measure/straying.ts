/**
 * Whether residuals follow each other instead of jumping to and fro, so that the law itself does not fit: the ratio of
 * Durbin and Watson, d = Σ(rᵢ − rᵢ₋₁)²/Σrᵢ², is near 2 for chance and near 0 for a bend. Below 1 from a dozen readings on
 * is rare by chance (tables of Durbin & Watson 1951, from memory).
 */
import { square } from '../numerics/elementary/whole-powers.ts';

export function stray(residuals: readonly number[]): boolean {
  if (residuals.length < 12) return false;
  let jumps = 0;
  let size = 0;
  residuals.forEach((value, i) => {
    size += square(value);
    if (i > 0) jumps += square(value - residuals[i - 1]!);
  });
  return jumps < size;
}
