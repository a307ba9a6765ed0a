/** The valid word that a mistyped one was probably meant to be. */
import { closest, distance } from 'fastest-levenshtein';

const longest = 64;

export function nearest(word: string, valid: readonly string[]): string | undefined {
  if (word.length > longest || valid.length === 0) return undefined;
  const candidate = closest(word, valid);
  return distance(word, candidate) <= Math.ceil(candidate.length / 3) ? candidate : undefined;
}
