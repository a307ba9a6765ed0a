import { put, type Index } from './memory.ts';

/** Zeros from a word on. */
export function clear(array: Index, length: Index): void {
  for (let i = 0; i < length; i += 1) put(array, i, 0);
}
