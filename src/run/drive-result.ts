/** What an engine can drive and from where it starts. SI throughout, angles in radians. */

/** Columns of equal length, speeds ascending; the last torque is zero or less unless the curve had to be cut short. */
export interface TorqueCurve {
  /** [rad/s]. */
  readonly speed: Float64Array;
  /** Mean torque at the shaft [N m]. */
  readonly torque: Float64Array;
  /** Air from the supply [kg/s]. */
  readonly airMassFlow: Float64Array;
}

/** A speed at which engine and load agree. */
export interface OperatingPoint {
  /** [rad/s], between two speeds of the curve by a straight line. */
  readonly speed: number;
  /** True when the engine comes back to it: torque to spare below, torque missing above. */
  readonly stable: boolean;
}

/** How the engine starts from one place of the crank. */
export interface StartPosition {
  /** Crank angle at rest, after top dead centre [rad]. */
  readonly crankAngle: number;
  readonly startsUnaided: boolean;
  /** Slowest push that catches [rad/s]; 0 unaided, undefined when none below the settled speed does. */
  readonly push?: number;
  /** From the air turned on, or the push, to nine tenths of the settled speed [s]; undefined when it never starts. */
  readonly secondsToSpeed?: number;
}

/** How the engine starts from everywhere. */
export interface StartMap {
  /** At equal spacing all around the turn, from top dead centre. */
  readonly positions: readonly StartPosition[];
  /** Share of the positions from which it starts unaided. */
  readonly unaidedShare: number;
}

/** What the engine can drive at any speed, where that meets the load, and how it starts. */
export interface Drive {
  readonly curve: TorqueCurve;
  /** The same engine with every leak shut. */
  readonly curveWithoutLeaks: TorqueCurve;
  /** Torque of the load [N m] at the speeds of the curve. */
  readonly load: Float64Array;
  /** Mean torque at the slowest turning [N m]: what it takes to stall the engine. */
  readonly stallTorque: number;
  readonly operatingPoints: readonly OperatingPoint[];
  readonly startMap: StartMap;
  /** The same for an engine that is to run the other way, angles counted that way; only where its gear serves both. */
  readonly startMapReversed?: StartMap;
}
