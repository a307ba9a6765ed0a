/**
 * A slot along an arc with half-round ends: every point within half its width of an arc of the pitch circle.
 * The arc runs anticlockwise from angle 0 to `length` about the origin.
 */
import { atan2 } from '../../numerics/elementary/inverse-trigonometric.ts';
import { hypot } from '../../numerics/elementary/roots.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import type { Arc, ArcRegion } from './arc-region.ts';

export interface ArcSlot {
  readonly pitchRadius: number;
  readonly width: number;
  /** Angle between the centres of the two round ends [rad], below a full turn. */
  readonly length: number;
}

export function slotRegion({ pitchRadius, width, length }: ArcSlot): ArcRegion {
  const half = width / 2;
  const endX = pitchRadius * cos(length);
  const endY = pitchRadius * sin(length);
  const outline: Arc[] = [
    { x: 0, y: 0, radius: pitchRadius + half, start: 0, sweep: length },
    { x: endX, y: endY, radius: half, start: length, sweep: Math.PI },
    { x: 0, y: 0, radius: pitchRadius - half, start: length, sweep: -length },
    { x: pitchRadius, y: 0, radius: half, start: Math.PI, sweep: Math.PI },
  ];
  return { outline, contains: (x, y) => distanceToSpine(pitchRadius, length, x, y) < half };
}

/** Distance of a point from the arc that the slot is cut along. */
function distanceToSpine(pitchRadius: number, length: number, x: number, y: number): number {
  const angle = atan2(y, x);
  const along = angle < 0 ? angle + 2 * Math.PI : angle;
  if (along <= length) return Math.abs(hypot(x, y) - pitchRadius);
  const toStart = hypot(x - pitchRadius, y);
  const toEnd = hypot(x - pitchRadius * cos(length), y - pitchRadius * sin(length));
  return Math.min(toStart, toEnd);
}
