/**
 * The memory of the kernel, in words of eight bytes: a double or a whole number stands in each.
 *
 * This is what the kernel runs on as plain TypeScript, for tests. For WebAssembly the compiler takes memory.wasm.ts, which
 * says the same in the machine's own instructions.
 */

/** A whole number: a count, or the number of a word. */
export type Index = number;

/** Enough for an engine and an integrator at a time. */
const WORDS = 262_144;

const words = new ArrayBuffer(8 * WORDS);
const doubles = new Float64Array(words);
const integers = new Int32Array(words);

/** For the host, which fills it and reads it. */
export const memoryBuffer = (): ArrayBuffer => words;

export const at = (from: Index, offset: Index): number => doubles[from + offset]!;

export function put(from: Index, offset: Index, value: number): void {
  doubles[from + offset] = value;
}

export const intAt = (from: Index, offset: Index): Index => integers[2 * (from + offset)]!;

export function putInt(from: Index, offset: Index, value: Index): void {
  integers[2 * (from + offset)] = value;
}

const scratch = new Float64Array(1);
const scratchWords = new Int32Array(scratch.buffer);
scratch[0] = 1;
/** Which of the two words holds sign and exponent depends on the machine. */
const upper = scratchWords[1] === 0 ? 0 : 1;

/** Of x > 0: n for 2ⁿ ≤ x < 2ⁿ⁺¹. */
export function exponentOf(value: number): Index {
  scratch[0] = value;
  return (scratchWords[upper]! >> 20) - 1023;
}

/** Of a number that is whole already. */
export const toIndex = (value: number): Index => value;
