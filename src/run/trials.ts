/**
 * What became of an engine that does not run when it was tried with changes; `src/study/remedies` tries them. SI
 * throughout; values of the scenario are texts, as they are written in its file.
 */
import type { CompressorVerdict } from './compressor-verdict.ts';

/** A value of the scenario as it is and as it was tried. */
export interface ChangedSetting {
  /** Keys joined by points: "leaks.0.clearance". */
  readonly path: string;
  readonly now: string;
  readonly then: string;
}

/** One change that a builder can make. */
export interface TriedChange {
  /** "a wider hose" */
  readonly what: string;
  /** All that it sets; one change may need several values. */
  readonly settings: readonly ChangedSetting[];
  /** On what condition it may be made, a whole sentence. */
  readonly proviso?: string;
}

/** How the changed engine runs, from its start in the scenario. */
export interface ChangedRunning {
  /** [rad/s] */
  readonly speed: number;
  /** Into the load [W]. */
  readonly brakePower: number;
  readonly compressor?: CompressorVerdict;
  /** Share of the positions from which it then starts unaided; only where the change is none of the start itself. */
  readonly unaidedShare?: number;
}

/** Turned as slowly as a torque curve goes: what the engine brings to the shaft, and what the load takes there [N m]. */
export interface SlowTurn {
  readonly torque: number;
  readonly load: number;
}

/** A change after which the engine still does not run, and how it then turns slowly. */
export interface InVain {
  readonly change: TriedChange;
  /** Not known of an engine that cannot be turned slowly, and not asked where another change makes it run. */
  readonly slowTurn?: SlowTurn;
}

/** What was tried, and what came of it. */
export interface Trials {
  /** Share of the positions from which the engine starts unaided as it is, where that is known. */
  readonly unaidedShareNow?: number;
  /** Only where no change alone makes it run. */
  readonly slowTurnNow?: SlowTurn;
  /** The easiest change that makes it run, or two together where none does alone. */
  readonly running?: {
    readonly changes: readonly [TriedChange, ...TriedChange[]];
    readonly answer: ChangedRunning;
    /** The same change less far, with which it does not run. */
    readonly notEnough?: readonly ChangedSetting[];
  };
  /** What did not make it run, each change as far as it was taken; the nearest first where none alone does. */
  readonly inVain: readonly InVain[];
}
