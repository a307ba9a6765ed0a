/** Contract of the wall-heat family: what the cylinder wall gives to the gas. */
import type { Family } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';

export interface WallHeat {
  /**
   * Heat flow [W] into gas at temperature T [K] and pressure p [Pa] that touches an area [m²] of wall, at a crank speed
   * ω ≥ 0 [rad/s]. Negative when the wall cools the gas.
   */
  flow(area: number, temperature: number, pressure: number, speed: number): number;
  /** The numbers [W/(m² K), K] of a coefficient that never changes, if that is all there is to it. */
  readonly steady?: { readonly coefficient: number; readonly wallTemperature: number };
}

export type WallHeatFamily = Family<PartContext, WallHeat>;
