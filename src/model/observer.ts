/**
 * From a state to the instant it stands for: pressures and temperatures first, then torques, then each passage's flow once.
 *
 *   p = (γ−1) U/V,  T = U/(m cv)
 */
import { wallArea } from '../parts/cylinder.ts';
import { FIRST_VOLUME, type Engine } from './engine.ts';
import { flows, type Flows } from './flows.ts';
import { emptyInstant, type Instant } from './instant.ts';
import { mechanics, type Mechanics } from './mechanics.ts';
import { SLOT, type Slots } from './slots.ts';

/**
 * Trial states of an integrator may leave the physical range; the laws are then evaluated at its border [kg/m³, K, rad/s].
 * A run whose accepted state is out there ends.
 */
const LEAST_DENSITY = 1e-4;
const LEAST_TEMPERATURE = 20;
const MOST_TEMPERATURE = 3000;
const LEAST_SPEED = 1e-3;

export interface Observer {
  /** Overwritten by each look. */
  readonly instant: Instant;
  readonly mechanical: Mechanics;
  readonly flows: Flows;
  /** Looks at a state that holds the speed. */
  look(y: Float64Array): void;
  /** Looks at a state that holds the kinetic energy of an engine that turns forward; its speed [rad/s]. */
  lookTurning(y: Float64Array): number;
  /** Volume [m³] and mass [kg] that the laws were given, of a volume by its number. */
  volume(index: number): number;
  mass(y: Float64Array, index: number): number;
  /** Heat [W] from the wall of a cylinder end, by its number, at a temperature and a pressure. */
  wallHeat(end: number, temperature: number, pressure: number, speed: number): number;
}

export function observer(engine: Engine, slots: Slots): Observer {
  const { gas, ends, volumes } = engine;
  const instant = emptyInstant(engine);
  const mechanical = mechanics(engine, instant);
  const { pressure, temperature, endVolume } = instant;
  const cv = gas.heatCapacityAtConstantVolume;
  const gammaMinusOne = gas.heatCapacityRatio - 1;
  const passing = flows(engine, instant);
  const fixedVolume = Float64Array.from(volumes, (volume) => volume.fixedVolume ?? 0);
  const firstEnd = volumes.length - ends.length;
  const firstMass = slots.mass(0);

  const volume = (i: number): number => (i < firstEnd ? fixedVolume[i]! : endVolume[i - firstEnd]!);
  const mass = (y: Float64Array, i: number): number =>
    Math.max(y[firstMass + 2 * i]!, LEAST_DENSITY * volume(i));
  const wallHeat = (i: number, t: number, p: number, speed: number): number =>
    engine.wallHeat.flow(wallArea(ends[i]!, engine.cylinder.bore, endVolume[i]!), t, p, Math.abs(speed));

  const setGas = (y: Float64Array): void => {
    for (let i = 0; i < fixedVolume.length; i += 1) {
      const v = i < firstEnd ? fixedVolume[i]! : endVolume[i - firstEnd]!;
      const m = Math.max(y[firstMass + 2 * i]!, LEAST_DENSITY * v);
      const t = y[firstMass + 2 * i + 1]! / (m * cv);
      const bounded = Math.min(MOST_TEMPERATURE, Math.max(LEAST_TEMPERATURE, t));
      temperature[FIRST_VOLUME + i] = bounded;
      pressure[FIRST_VOLUME + i] = (gammaMinusOne * m * cv * bounded) / v;
    }
  };

  /** All but the position, which must be set. */
  const feel = (y: Float64Array, speed: number): void => {
    const angle = y[SLOT.crankAngle]!;
    setGas(y);
    mechanical.setTorques(angle, speed);
    passing.setOpenings(angle, Math.abs(speed));
    passing.setFlows();
    for (let i = 0; i < ends.length; i += 1) {
      const { place } = ends[i]!;
      instant.wallHeat[i] = wallHeat(i, temperature[place]!, pressure[place]!, speed);
    }
  };

  return {
    instant,
    mechanical,
    flows: passing,
    volume,
    mass,
    wallHeat,
    look(y) {
      mechanical.setPosition(y[SLOT.crankAngle]!);
      feel(y, y[SLOT.speed]!);
    },
    lookTurning(y) {
      mechanical.setPosition(y[SLOT.crankAngle]!);
      const square = (2 * y[SLOT.speed]!) / instant.momentOfInertia;
      const speed = square > LEAST_SPEED * LEAST_SPEED ? Math.sqrt(square) : LEAST_SPEED;
      feel(y, speed);
      return speed;
    },
  };
}
