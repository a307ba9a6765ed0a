/**
 * Whether readings can tell the unknowns apart. Two estimates that go together to 0.95 and more, or a scaled Jacobian whose
 * condition number exceeds 30 (Belsley, Kuh & Welsch, Regression Diagnostics, from memory), mean that one cause can stand
 * in for another.
 */
import { exp } from '../numerics/elementary/exponential.ts';
import { log } from '../numerics/elementary/logarithm.ts';
import type { LeastSquaresFit } from '../numerics/least-squares.ts';
import { directTest, type Unknown } from './unknowns.ts';
import { plain } from './words.ts';

const TOGETHER = 0.95;
const ILL_CONDITIONED = 30;
/** Known to less than a factor of three either way is hardly known. */
const HARDLY = log(3);

const change = (logarithm: number): string => {
  const share = exp(logarithm) - 1;
  return `${plain(Math.abs(share) * 100, 2)} % ${share < 0 ? 'less' : 'more'}`;
};

/** Plain warnings; none when every unknown stands by itself. `halves` are half the 95 % intervals of the logarithms. */
export function identifiabilityWarnings(
  unknowns: readonly Unknown[],
  fit: LeastSquaresFit,
  halves: readonly number[],
): string[] {
  const pairs = unknowns.flatMap((own, i) =>
    unknowns.slice(i + 1).flatMap((other, k) => {
      const together = fit.correlation[i]?.[i + 1 + k] ?? 0;
      return Math.abs(together) < TOGETHER ? [] : [pairWarning(own, other, together)];
    }),
  );
  const tangled =
    pairs.length === 0 && unknowns.length > 1 && fit.conditionNumber > ILL_CONDITIONED
      ? [trade(unknowns, fit)]
      : [];
  const hardly = unknowns.filter((_, i) => !(halves[i]! < HARDLY));
  return [
    ...pairs,
    ...tangled,
    ...hardly.map((own) => `These readings say next to nothing about ${own.path}.${instead(own)}`),
  ];
}

function pairWarning(own: Unknown, other: Unknown, together: number): string {
  const way = together < 0 ? 'more of one with less of the other' : 'more of both, or less of both,';
  return (
    `These readings cannot tell ${own.path} from ${other.path}: ${way} fits as well (correlation ` +
    `${plain(together, 2)}). Believe what they do together, not either figure.${instead(own) || instead(other)}`
  );
}

/** The change of all unknowns together that the readings notice least. */
function trade(unknowns: readonly Unknown[], { weakestDirection, conditionNumber }: LeastSquaresFit): string {
  const parts = unknowns.flatMap(({ path }, i) => {
    const part = weakestDirection[i]!;
    return Math.abs(part) < 0.1 ? [] : [`${change(0.1 * part)} of ${path}`];
  });
  return (
    `These readings can hardly tell the causes apart (condition number ${plain(conditionNumber, 2)}): ` +
    `${parts.join(' with ')} leaves them almost as they are.`
  );
}

function instead(own: Unknown): string {
  const test = directTest(own);
  return test === undefined ? '' : ` A bench test of kind “${test}” measures ${own.path} by itself.`;
}
