/**
 * A journey against the crank angle, whose state holds the kinetic energy, as seen by somebody who thinks in speeds.
 */
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { square } from '../numerics/elementary/whole-powers.ts';
import type { AcceptedStep, ComponentReader, EventFunction, Journey } from '../numerics/integrator.ts';
import { largestTravelRate } from '../parts/crank-train.ts';

/** Puts the kinetic energy in the place of the speed. */
export function holdEnergy(system: EngineSystem, y: Float64Array): void {
  const speed = y[SLOT.speed]!;
  y[SLOT.speed] = (system.momentOfInertia(y[SLOT.crankAngle]!) * speed * speed) / 2;
}

/**
 * Work of the pistons on the air of the room by the volume they have pushed back, beyond what steps have added up [J]; zero
 * without totals.
 *
 * Steps may be as long as a heavy wheel allows, and then add up even a pressure that never changes to some digits only: little
 * beside the energy of the wheel, and much beside the work of an engine that hardly drives it. What this grows by in a stretch
 * is therefore taken from the kinetic energy at its end.
 */
export function missedRoomWork(system: EngineSystem, y: Float64Array): number {
  const { engine, slots, dimension } = system;
  if (dimension === slots.firstTotal) return 0;
  return engine.atmosphere.pressure * system.pushedVolume(y[SLOT.crankAngle]!) - y[slots.roomWork]!;
}

/** Puts the speed back in the place of the kinetic energy. */
export function holdSpeed(system: EngineSystem, y: Float64Array): void {
  y[SLOT.speed] = speedOf(system, y[SLOT.speed]!, y[SLOT.crankAngle]!);
}

const speedOf = (system: EngineSystem, energy: number, angle: number): number =>
  Math.sqrt(Math.max(0, 2 * energy) / system.momentOfInertia(angle));

/** One step after the other, with the speed in the place of the kinetic energy. */
class StepInSpeeds implements AcceptedStep {
  private readonly system: EngineSystem;
  private step: AcceptedStep | undefined;

  constructor(system: EngineSystem) {
    this.system = system;
  }

  of(step: AcceptedStep): this {
    this.step = step;
    return this;
  }

  get from(): number {
    return this.held.from;
  }

  get to(): number {
    return this.held.to;
  }

  component(index: number, angle: number): number {
    const value = this.held.component(index, angle);
    return index === SLOT.speed ? speedOf(this.system, value, angle) : value;
  }

  interpolate(angle: number, out: Float64Array): void {
    this.held.interpolate(angle, out);
    out[SLOT.speed] = speedOf(this.system, out[SLOT.speed]!, angle);
  }

  private get held(): AcceptedStep {
    if (this.step === undefined) throw new Error('no step has been taken yet');
    return this.step;
  }
}

/** No engine that turns at that speed, at whatever crank angle, has more kinetic energy [J]. */
function mostEnergy({ engine }: EngineSystem, speed: number): number {
  const { cylinders, reciprocating_mass } = engine.cylinder;
  const pistons = cylinders * reciprocating_mass * square(largestTravelRate(engine.crank));
  return 0.5 * (engine.flywheel.momentOfInertia + pistons) * square(speed);
}

/** The same journey, its events and watchers shown the speed. */
export function turningJourney(system: EngineSystem, journey: Journey): Journey {
  const { events, onStep, calmAbove } = journey;
  const event = (told: EventFunction): EventFunction => ({
    value: (angle, component) => {
      const seen: ComponentReader = (index) =>
        index === SLOT.speed ? speedOf(system, component(index), angle) : component(index);
      return told.value(angle, seen);
    },
  });
  const seen = new StepInSpeeds(system);
  const calmEnergy = (speed: number): Journey['calmAbove'] => ({
    component: SLOT.speed,
    value: mostEnergy(system, speed),
  });
  return {
    ...journey,
    ...(events ? { events: events.map(event) } : {}),
    ...(onStep ? { onStep: (step) => onStep(seen.of(step)) } : {}),
    calmAbove: calmAbove?.component === SLOT.speed ? calmEnergy(calmAbove.value) : calmAbove,
  };
}
