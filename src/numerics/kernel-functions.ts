/** What the kernel offers, src/kernel/main.ts. Numbers of words are addresses; flags are 0 and 1. */
import type * as functions from '../kernel/main.ts';

/** A function as WebAssembly has it, where the answer to a question is a number. */
type InWasm<F> = F extends (...args: infer Args) => infer Result
  ? (...args: Args) => Result extends boolean ? number : Result
  : never;

export type KernelFunctions = { readonly [Name in keyof typeof functions]: InWasm<(typeof functions)[Name]> };
