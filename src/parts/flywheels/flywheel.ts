/** Contract of the flywheel family. */
import type { Family } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';

export interface Flywheel {
  /** J about the shaft [kg m²]. */
  readonly momentOfInertia: number;
  /** Radius [m] of the fastest rim, and density [kg/m³] of its material, for the bursting caution; absent if not known. */
  readonly rim?: { readonly radius: number; readonly density: number };
}

export type FlywheelFamily = Family<PartContext, Flywheel>;
