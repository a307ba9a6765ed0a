/**
 * A quantity that goes with the crank angle, tabulated over one stretch of the turn and constant over the rest. As data, so
 * that a solver looks it up without calling a function it cannot know beforehand.
 */
import { segmentTable, segmentValue, type SegmentTable } from '../numerics/segment-table.ts';
import { forwardAngle } from './crank-positions.ts';

export interface TurnTable {
  /** Crank angle at which the stretch begins [rad]. */
  readonly begins: number;
  /** Value over the rest of the turn, on top of which the table stands. */
  readonly elsewhere: number;
  readonly stretch: SegmentTable;
}

/** `law` of the angle since `begins`, between breakpoints counted from there, the first 0. */
export function turnTable(
  law: (since: number) => number,
  begins: number,
  breakpoints: readonly number[],
  elsewhere = 0,
): TurnTable {
  return { begins, elsewhere, stretch: segmentTable((since) => law(since) - elsewhere, breakpoints) };
}

export const turnTableValue = ({ begins, elsewhere, stretch }: TurnTable, angle: number): number =>
  elsewhere + segmentValue(stretch, forwardAngle(begins, angle));
