/** How a run can end. An engine that does not run is an outcome with a reason, not an error. */

/** The ends of a run by name. */
export type OutcomeKind =
  /** Turns round after round alike. */
  | 'settled'
  /** Came to rest for good after at least one whole turn. */
  | 'stalled'
  /** Never got round once. */
  | 'no-start'
  /** Runs, but against its running direction. */
  | 'runs-backwards'
  /** Still changing when the longest time was over. */
  | 'not-settled'
  /** The integrator could not go on; a fault of ours or of absurd input, with the place. */
  | 'step-limit'
  | 'non-finite';

/** How a run ended. An engine that does not run is an outcome with a reason, not an error. */
export interface Outcome {
  readonly kind: OutcomeKind;
  /** One plain sentence. */
  readonly reason: string;
  /** Engine time [s] and crank angle [rad, within one turn] at the end of the run. */
  readonly time: number;
  readonly crankAngle: number;
  /** Whole turns made forward. */
  readonly turns: number;
  /** For an engine at rest: how much more torque [N m] would have moved it on. */
  readonly missingTorque?: number;
}
