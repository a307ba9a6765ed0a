/** What the engine feels at one instant. One object per system, overwritten by each evaluation. */
import { ATMOSPHERE, SUPPLY, type Engine } from './engine.ts';

export interface Instant {
  /** By place. */
  readonly pressure: Float64Array;
  readonly temperature: Float64Array;
  /** By passage: mass [kg/s] and enthalpy [W], positive from → to. */
  readonly massFlow: Float64Array;
  readonly enthalpyFlow: Float64Array;
  /** By cylinder end: volume [m³], dV/dθ [m³/rad], heat from its wall [W]. */
  readonly endVolume: Float64Array;
  readonly volumeRate: Float64Array;
  readonly wallHeat: Float64Array;
  /** Torques at the crank [N m]: of the gas, of moving masses, of gravity; then what resists. */
  gasTorque: number;
  inertiaTorque: number;
  gravityTorque: number;
  bearingTorque: number;
  pistonTorque: number;
  gearTorque: number;
  loadTorque: number;
  /** Of flywheel and pistons about the crank, at this angle [kg m²]. */
  momentOfInertia: number;
}

/** An instant of that engine with nothing but its surroundings set. */
export function emptyInstant(engine: Engine): Instant {
  const places = 2 + engine.volumes.length;
  const instant: Instant = {
    pressure: new Float64Array(places),
    temperature: new Float64Array(places),
    massFlow: new Float64Array(engine.passages.length),
    enthalpyFlow: new Float64Array(engine.passages.length),
    endVolume: new Float64Array(engine.ends.length),
    volumeRate: new Float64Array(engine.ends.length),
    wallHeat: new Float64Array(engine.ends.length),
    gasTorque: 0,
    inertiaTorque: 0,
    gravityTorque: 0,
    bearingTorque: 0,
    pistonTorque: 0,
    gearTorque: 0,
    loadTorque: 0,
    momentOfInertia: 0,
  };
  instant.pressure[SUPPLY] = engine.supply.pressure;
  instant.temperature[SUPPLY] = engine.supply.temperature;
  instant.pressure[ATMOSPHERE] = engine.atmosphere.pressure;
  instant.temperature[ATMOSPHERE] = engine.atmosphere.temperature;
  return instant;
}
