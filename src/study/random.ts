/** Random numbers that are the same for the same seed, everywhere and always. */
import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';

/**
 * Spreads a seed over 32 bits, so that seeds which look alike begin differently: the generator itself takes a while to get
 * away from a state of mostly zeros. Finalizer of MurmurHash3, A. Appleby, public domain (constants from memory).
 */
function mixed(seed: number): number {
  let x = seed | 0;
  x = Math.imul(x ^ (x >>> 16), 0x85ebca6b);
  x = Math.imul(x ^ (x >>> 13), 0xc2b2ae35);
  return x ^ (x >>> 16);
}

const GOLDEN = 0x9e3779b9;

/** Numbers from 0 up to 1, with 32 random bits each. */
export function randomFrom(seed: number): () => number {
  const generator = xoroshiro128plusFromState([1, 2, 3, 4].map((i) => mixed(seed + Math.imul(i, GOLDEN))));
  return () => (generator.next() >>> 0) / 4_294_967_296;
}
