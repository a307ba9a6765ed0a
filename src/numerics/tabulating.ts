/** Tables of functions that are smooth between known breakpoints (segment-table.ts). */
import { HalfSegments, type Laws } from './half-segments.ts';
import type { SegmentTable } from './segment-table.ts';

/** Cells of a half segment at most, unless said otherwise: round openings are then right to a millionth of their largest value. */
const MOST_CELLS = 48;

/** Tabulates a law over ascending breakpoints; at least two. */
export const segmentTable = (law: (x: number) => number, breakpoints: readonly number[]): SegmentTable =>
  segmentTables(1, single(law), breakpoints, MOST_CELLS)[0]!;

/** The same for so many laws that are worked out together. */
export const segmentTables = (
  count: number,
  laws: Laws,
  breakpoints: readonly number[],
  mostCells: number,
): readonly SegmentTable[] => new HalfSegments(count, laws, breakpoints, mostCells).tables(breakpoints);

const single =
  (law: (x: number) => number): Laws =>
  (x, values) => {
    values[0] = law(x);
  };

/**
 * How x goes with a stage that is passed there and back: in proportion to it either way, so that the way back has the same
 * nodes as the way there.
 */
export interface ThereAndBack {
  /** x where the stage is zero. */
  readonly leaves: number;
  readonly returns: number;
  /** How far x goes per unit of the stage. */
  readonly perStageThere: number;
  readonly perStageBack: number;
}

/** A rest between there and back that is no longer than this is none. */
const LEAST_REST = 1e-9;

/**
 * Tabulates a law of the stage over ascending stages; at least two. Between passing the last of them on the way there and
 * on the way back, the law rests. The x of the table counts from the first.
 */
export function thereAndBackTable(
  law: (stage: number) => number,
  stages: readonly number[],
  { leaves, returns, perStageThere, perStageBack }: ThereAndBack,
  mostCells = MOST_CELLS,
): SegmentTable {
  const first = stages[0]!;
  const last = stages.length - 1;
  const ends = returns - leaves - (perStageBack + perStageThere) * first;
  const starts = stages.map((stage) => perStageThere * (stage - first));
  const back = (i: number): number => ends - perStageBack * (stages[i]! - first);
  const halves = new HalfSegments(1, single(law), stages, mostCells);
  if (back(last) - starts[last]! > LEAST_REST) {
    halves.addSteadyAt(stages[last]!);
    halves.addAgain(2 * last);
    starts.push(back(last));
  }
  for (let half = 2 * last - 1; half >= 0; half -= 1) halves.addAgain(half);
  for (let i = last - 1; i >= 0; i -= 1) starts.push(back(i));
  return halves.tables(starts)[0]!;
}
