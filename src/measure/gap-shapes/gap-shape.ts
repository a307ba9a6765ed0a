/** The shape of a gap whose height is to be found from its leak. */
import type { Family } from '../../kinds/kind.ts';

export interface GapShape {
  /** What its height is called: "radial clearance". */
  readonly heightName: string;
  /** Resistance Z [1/m³] and smallest section [m²] at a height [m]. */
  readonly resistance: (height: number) => number;
  readonly section: (height: number) => number;
}

export type GapShapeFamily = Family<unknown, GapShape>;
