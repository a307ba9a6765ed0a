/** Contract of the tolerances: how a size of the engine as built strays from the size on the drawing. */
import type { Family } from '../../kinds/kind.ts';

/** What stands at a path of the scenario. */
export interface Nominal {
  /** As it is written. */
  readonly text: string;
  /** Diameter [m] that a clearance belongs to. */
  readonly diameter?: number;
}

export type Strayed =
  | { readonly ok: true; readonly text: string }
  /** Why the tolerance and what it belongs to do not go together: what was expected, what stands there. */
  | { readonly ok: false; readonly expected: string; readonly received: string };

export interface Tolerance {
  /** Path in the scenario. */
  readonly path: string;
  /** "valve_gear.admission.lap ± 0.1 mm" */
  readonly words: string;
  /** A value as built; `random` gives numbers from 0 up to 1 and is asked as often each time. */
  stray(nominal: Nominal, random: () => number): Strayed;
}

export type ToleranceFamily = Family<null, Tolerance>;
