/**
 * A port that opens and shuts along straight ramps:
 *
 *   share of the full area = min(1, (θ − opens)/ramp, (closes − θ)/ramp), zero outside
 *
 * Assumes that both ramps take the same angle and fit between opening and closing.
 */
import { forwardAngle } from '../crank-positions.ts';

export interface Window {
  /** Crank angles at which the port starts to open and has just closed [rad]. */
  readonly opens: number;
  readonly closes: number;
  /** Crank angle from shut to fully open, and back [rad]. */
  readonly ramp: number;
}

export const windowLength = ({ opens, closes }: Window): number => forwardAngle(opens, closes);

/** From 0 shut to 1 fully open. */
export function openShare(window: Window, angle: number): number {
  const since = forwardAngle(window.opens, angle);
  const left = windowLength(window) - since;
  return Math.max(0, Math.min(1, since / window.ramp, left / window.ramp));
}

/** Crank angles at which a ramp begins or ends. */
export const windowEdges = ({ opens, closes, ramp }: Window): number[] => [
  opens,
  opens + ramp,
  closes - ramp,
  closes,
];
