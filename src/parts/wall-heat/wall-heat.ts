/** Contract of the wall-heat family: what the cylinder wall gives to the gas. */
import type { Family } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';

/** A coefficient [W/(m² K)] that never changes. */
export interface SteadyWall {
  readonly kind: 'steady';
  readonly wallTemperature: number;
  readonly coefficient: number;
}

/** One that goes as factor μ Re^0.8, Re with the mean piston speed and a length [m]. */
export interface CorrelatedWall {
  readonly kind: 'correlated';
  readonly wallTemperature: number;
  readonly factor: number;
  readonly length: number;
  readonly crankRadius: number;
}

export interface WallHeat {
  /**
   * Heat flow [W] into gas at temperature T [K] and pressure p [Pa] that touches an area [m²] of wall, at a crank speed
   * ω ≥ 0 [rad/s]. Negative when the wall cools the gas.
   */
  flow(area: number, temperature: number, pressure: number, speed: number): number;
  /** The same by numbers, if it is one of these laws; the kernel then need not ask. */
  readonly law?: SteadyWall | CorrelatedWall;
}

export type WallHeatFamily = Family<PartContext, WallHeat>;
