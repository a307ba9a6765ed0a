/**
 * The opening of a lifted valve on a round sharp-edged seat: the least surface between seat and valve, and never more than
 * the bore below it leaves beside the pin.
 *
 *   flat poppet   A = π d s                                          a cylinder, s the lift, d the bore of the seat
 *   ball          A = π r g (1 + R/D),  D = √((h + s)² + r²)         a cone from the edge square on to the ball, of slant
 *                 g = D − R, h = √(R² − r²)                          height g; r, R radii of bore and ball
 *   bore          A = π (d² − d_pin²)/4
 *
 * The ball's formula is π d s · sin(half the seat's cone) for small lifts. Source: geometry; the three together as for the
 * poppet valves of engine texts (Heywood, Internal Combustion Engine Fundamentals, chapter 6; from memory).
 */
import { square } from '../../numerics/elementary/whole-powers.ts';

export const seatShapes = ['ball', 'flat poppet'] as const;
export type SeatShape = (typeof seatShapes)[number];

export interface LiftedSeat {
  readonly shape: SeatShape;
  readonly seatDiameter: number;
  /** Of the ball or the head; larger than the seat. */
  readonly valveDiameter: number;
  /** Of the pin that stands in the bore; smaller than it. */
  readonly pinDiameter: number;
}

const ballOpening = ({ seatDiameter, valveDiameter }: LiftedSeat, lift: number): number => {
  const [edge, ball] = [seatDiameter / 2, valveDiameter / 2];
  const height = Math.sqrt(square(ball) - square(edge));
  const toEdge = Math.sqrt(square(height + lift) + square(edge));
  // The difference of squares keeps the digits of a small slant height.
  const slant = (lift * (2 * height + lift)) / (toEdge + ball);
  return Math.PI * edge * slant * (1 + ball / toEdge);
};

const poppetOpening = ({ seatDiameter }: LiftedSeat, lift: number): number => Math.PI * seatDiameter * lift;

const openings: Readonly<Record<SeatShape, (seat: LiftedSeat, lift: number) => number>> = {
  ball: ballOpening,
  'flat poppet': poppetOpening,
};

const boreArea = ({ seatDiameter, pinDiameter }: LiftedSeat): number =>
  (Math.PI * (square(seatDiameter) - square(pinDiameter))) / 4;

/** Area [m²] at a lift of zero or more [m]. */
export const seatOpening = (seat: LiftedSeat, lift: number): number =>
  Math.min(boreArea(seat), openings[seat.shape](seat, lift));

/** The lift [m] from which the bore is the narrower place, if it lies below the greatest lift; by bisection. */
export function liftWhereBoreLimits(seat: LiftedSeat, greatestLift: number): number | undefined {
  const opening = openings[seat.shape];
  if (opening(seat, greatestLift) <= boreArea(seat)) return undefined;
  let [low, high] = [0, greatestLift];
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (opening(seat, middle) < boreArea(seat)) low = middle;
    else high = middle;
  }
  return high;
}
