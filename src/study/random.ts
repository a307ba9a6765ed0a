/** Random numbers that are the same for the same seed, everywhere and always. */
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Numbers from 0 up to 1, with 32 random bits each. */
export function randomFrom(seed: number): () => number {
  const generator = xoroshiro128plus(seed);
  return () => (generator.next() >>> 0) / 2 ** 32;
}
