/** Contract of the load family: whatever the engine drives. */
import type { Family } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';

export interface Load {
  /** Torque [N m] that resists at speed ω ≥ 0 [rad/s]; never negative. At ω = 0 it holds like friction. */
  torque(speed: number): number;
  /** The numbers c₀, c₁, c₂ of a torque c₀ + c₁ ω + c₂ ω², if that is all there is to it. */
  readonly quadratic?: readonly [number, number, number];
}

export type LoadFamily = Family<PartContext, Load>;
