/** Seeded noise for synthetic readings: the same seed gives the same readings on every machine. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Noise {
  /** From 0 to 1. */
  readonly uniform: () => number;
  /** Of mean 0 and standard deviation 1 (Box and Muller). */
  readonly normal: () => number;
}

export function noise(seed: number): Noise {
  // Seeds that follow each other begin alike: spread them, and let the generator warm up.
  const generator = xoroshiro128plus(Math.imul(seed + 1, 0x9e3779b1));
  for (let i = 0; i < 20; i += 1) generator.next();
  const uniform = (): number => uniformFloat64(generator);
  return {
    uniform,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
  };
}

/** As an instrument with such steps shows it. */
export const stepped = (value: number, step: number): number => Math.round(value / step) * step;
