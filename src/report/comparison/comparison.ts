/** Several runs that are shown beside each other. */
import type { RunResult } from '../../run/result.ts';

/** A run among others. */
export interface ComparedRun {
  /** Short and told apart from the others: the name of its file. */
  readonly name: string;
  readonly result: RunResult;
}

/** A key of the scenario that is not given alike; a value for each run, `undefined` where it is left out. */
export interface ComparedKey {
  readonly key: string;
  readonly values: readonly (string | undefined)[];
}

/** Runs and what is not given alike in their scenarios; an entry of `values` for each run. */
export interface Comparison {
  readonly runs: readonly ComparedRun[];
  readonly differences: readonly ComparedKey[];
}

/** As many as there are inks. */
export const MOST_RUNS = 6;

/** "A", "B", …: how the pictures call a run. */
export const letterOf = (index: number): string => String.fromCharCode('A'.charCodeAt(0) + index);

/** How pages and tables call a run: its letter and its name. */
export const labelOf = ({ name }: ComparedRun, index: number): string => `${letterOf(index)} ${name}`;
