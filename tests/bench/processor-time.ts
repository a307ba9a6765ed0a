/**
 * Time as this process has used it: unlike that of the clock, it stays the same however many others want the processor.
 * The compiling and collecting of Node's other threads counts.
 */

/** [s]. */
export function processorTime(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}

export function median(values: readonly number[]): number {
  const ordered = values.toSorted((a, b) => a - b);
  const middle = Math.floor(ordered.length / 2);
  return ordered.length % 2 === 1 ? ordered[middle]! : (ordered[middle - 1]! + ordered[middle]!) / 2;
}

/** Of so many runs, one by one [s]. */
export const timesOf = (runs: number, run: () => unknown): number[] =>
  Array.from({ length: runs }, () => {
    const begin = processorTime();
    run();
    return processorTime() - begin;
  });

/** Median time [s] of a number of runs. */
export const medianTime = (runs: number, run: () => unknown): number => median(timesOf(runs, run));
