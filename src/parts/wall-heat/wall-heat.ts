/** Contract of the wall-heat family: what the cylinder wall gives to the gas. */
import type { Family } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';

export interface WallHeat {
  /** Heat flow [W] into gas at T [K] that touches an area [m²] of wall. Negative when the wall cools the gas. */
  flow(area: number, gasTemperature: number): number;
}

export type WallHeatFamily = Family<PartContext, WallHeat>;
