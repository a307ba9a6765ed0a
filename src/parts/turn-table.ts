/**
 * A quantity that goes with the crank angle, tabulated over one stretch of the turn and constant over the rest. As data, so
 * that a solver looks it up without calling a function it cannot know beforehand.
 */
import { segmentValue, type SegmentTable } from '../numerics/segment-table.ts';
import type { Laws } from '../numerics/half-segments.ts';
import { segmentTable, segmentTables, thereAndBackTable, type ThereAndBack } from '../numerics/tabulating.ts';
import { forwardAngle, FULL_TURN } from './crank-positions.ts';

/** Most of each half segment of a film, which turns sharply where its land is down to the height of the gap. */
export const CELLS_OF_FILMS = 96;

/** Stages that are no further apart are one. */
const SAME_STAGE = 1e-9;

export interface TurnTable {
  /** Crank angle at which the stretch begins [rad]. */
  readonly begins: number;
  /** Value over the rest of the turn, on top of which the table stands. */
  readonly elsewhere: number;
  readonly stretch: SegmentTable;
}

/** `law` of the angle since `begins`, between breakpoints counted from there, the first 0; elsewhere nothing. */
export const turnTable = (
  law: (since: number) => number,
  begins: number,
  breakpoints: readonly number[],
): TurnTable => ({ begins, elsewhere: 0, stretch: segmentTable(law, breakpoints) });

/**
 * So many laws of the crank angle, worked out together, over the whole turn between edges in [0, 2π): those of films, as a
 * rule.
 */
export function wholeTurnTables(count: number, laws: Laws, edges: readonly number[]): readonly TurnTable[] {
  const begins = edges[0] ?? 0;
  const breakpoints = [0, ...edges.slice(1).map((edge) => edge - begins), FULL_TURN];
  const atBegin = new Float64Array(count);
  laws(begins, atBegin);
  const above: Laws = (since, values) => {
    laws(begins + since, values);
    for (let k = 0; k < count; k += 1) values[k]! -= atBegin[k]!;
  };
  return segmentTables(count, above, breakpoints, CELLS_OF_FILMS).map((stretch, k) => ({
    begins,
    elsewhere: atBegin[k]!,
    stretch,
  }));
}

/**
 * `law` of a stage that the crank passes there and back. It bends at some stages, before the first of which it is
 * `elsewhere`, and behind the last of which it changes no more. For bends that are never reached the ends may stand.
 */
export function thereAndBack(
  law: (stage: number) => number,
  bends: readonly number[],
  way: ThereAndBack,
  elsewhere: number,
  cells?: number,
): number | TurnTable {
  const ordered = bends.toSorted((a, b) => a - b);
  const stages = ordered.filter((bend, i) => i === 0 || bend - ordered[i - 1]! > SAME_STAGE);
  if (stages.length === 1) return elsewhere;
  const begins = way.leaves + way.perStageThere * stages[0]!;
  const stretch = thereAndBackTable((stage) => law(stage) - elsewhere, stages, way, cells);
  return { begins, elsewhere, stretch };
}

export const turnTableValue = ({ begins, elsewhere, stretch }: TurnTable, angle: number): number =>
  elsewhere + segmentValue(stretch, forwardAngle(begins, angle));
