/**
 * Sobol's sequence: points of the unit cube that fill it evenly however many are taken, up to 16 dimensions.
 *
 * Direction numbers v_k of a dimension follow from a primitive polynomial x^s + a₁x^(s−1) + … + 1 and first odd numbers
 * m_1 … m_s, v_k = m_k 2^(32−k); from there on
 *
 *   v_k = a₁ v_(k−1) ⊕ … ⊕ a_(s−1) v_(k−s+1) ⊕ v_(k−s) ⊕ (v_(k−s) >> s)
 *
 * and point n is the exclusive or of the v_k of the set bits of the Gray code of n. The numbers are those of Joe and Kuo,
 * SIAM J. Sci. Comput. 30 (2008) 2635, "new-joe-kuo-6"; the points are compared with SciPy's in the tests.
 */
import { pow } from './elementary/power.ts';

/** Polynomial as bits, and the first odd numbers, dimension by dimension from the second. */
const directions: readonly (readonly [polynomial: number, ...first: number[]])[] = [
  [3, 1],
  [7, 1, 3],
  [11, 1, 3, 1],
  [13, 1, 1, 1],
  [19, 1, 1, 3, 3],
  [25, 1, 3, 5, 13],
  [37, 1, 1, 5, 5, 17],
  [41, 1, 1, 5, 5, 5],
  [47, 1, 1, 7, 11, 19],
  [55, 1, 1, 5, 1, 1],
  [59, 1, 1, 1, 3, 11],
  [61, 1, 3, 5, 5, 31],
  [67, 1, 3, 3, 9, 7, 49],
  [91, 1, 1, 1, 15, 21, 21],
  [97, 1, 3, 1, 13, 27, 49],
];

export const mostSobolDimensions = directions.length + 1;

const BITS = 32;
const RANGE = pow(2, BITS);

function directionNumbers(dimension: number): Uint32Array {
  const v = new Uint32Array(BITS);
  if (dimension === 0) return v.map((_, k) => pow(2, BITS - 1 - k));
  const [polynomial, ...first] = directions[dimension - 1]!;
  const degree = first.length;
  for (let k = 0; k < BITS; k += 1) {
    if (k < degree) {
      v[k] = first[k]! * pow(2, BITS - 1 - k);
      continue;
    }
    let next = v[k - degree]! ^ (v[k - degree]! >>> degree);
    for (let i = 1; i < degree; i += 1) if ((polynomial >>> (degree - i)) & 1) next ^= v[k - i]!;
    v[k] = next;
  }
  return v;
}

/**
 * The point of a number from 0 on, each coordinate in [0, 1). `shifts` are exclusive-or'd to the bits of the coordinates:
 * random ones make another sequence that fills as evenly.
 */
export function sobolPoints(
  dimensions: number,
  shifts: ArrayLike<number> = [],
): (n: number) => readonly number[] {
  const numbers = Array.from({ length: dimensions }, (_, dimension) => directionNumbers(dimension));
  return (n) => numbers.map((v, dimension) => coordinate(v, n, shifts[dimension] ?? 0));
}

function coordinate(v: Uint32Array, n: number, shift: number): number {
  const gray = n ^ (n >>> 1);
  let x = shift;
  for (let bit = 0; bit < BITS; bit += 1) if ((gray >>> bit) & 1) x ^= v[bit]!;
  return (x >>> 0) / RANGE;
}
