/**
 * A port that opens and shuts along straight ramps:
 *
 *   share of the full area = min(1, (θ − opens)/ramp, (closes − θ)/ramp), zero outside
 *
 * Assumes that both ramps take the same angle and fit between opening and closing.
 */
import type { ThereAndBack } from '../../numerics/tabulating.ts';
import { forwardAngle } from '../crank-positions.ts';

export interface Window {
  /** Crank angles at which the port starts to open and has just closed [rad]. */
  readonly opens: number;
  readonly closes: number;
  /** Crank angle from shut to fully open, and back [rad]. */
  readonly ramp: number;
}

export const windowLength = ({ opens, closes }: Window): number => forwardAngle(opens, closes);

/** The share of the full area, from 0 to 1, by the crank angle [rad]. */
export const shareOverTurn = (window: Window): ThereAndBack => ({
  leaves: window.opens,
  returns: window.opens + windowLength(window),
  perStageThere: window.ramp,
  perStageBack: window.ramp,
});

/** Crank angles at which a ramp begins or ends. */
export const windowEdges = ({ opens, closes, ramp }: Window): number[] => [
  opens,
  opens + ramp,
  closes - ramp,
  closes,
];
