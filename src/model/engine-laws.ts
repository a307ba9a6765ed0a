/** The laws of an engine that the kernel has no numbers for, as it asks for them. */
import type { EngineLaws } from '../numerics/kernel-laws.ts';
import type { AreaLaw } from '../parts/passage.ts';
import type { Engine } from './engine.ts';

/** A class, so that code compiled for one engine serves for the next. */
export class LawsOfEngine implements EngineLaws {
  private readonly engine: Engine;
  private readonly openings: readonly AreaLaw[];
  private readonly endsPerCylinder: number;
  /** What presses on the gear of one cylinder, overwritten from one to the next [Pa]. */
  private readonly gearPressures = { chest: 0, cylinder: 0, otherEnd: 0 };

  constructor(engine: Engine, openings: readonly AreaLaw[]) {
    this.engine = engine;
    this.openings = openings;
    this.endsPerCylinder = engine.ends.length / engine.cylinder.cylinders;
  }

  opening(which: number, angle: number, speed: number): number {
    return this.openings[which]!(angle, speed);
  }

  flow(passage: number, angle: number, pFrom: number, t: number, pTo: number, speed: number): number {
    return this.engine.passages[passage]!.passage.massFlow(angle, pFrom, t, pTo, t, speed);
  }

  drag(
    cylinder: number,
    angle: number,
    speed: number,
    chest: number,
    pressure: number,
    otherEnd: number,
  ): number {
    const { gearPressures, engine } = this;
    gearPressures.chest = chest;
    gearPressures.cylinder = pressure;
    gearPressures.otherEnd = otherEnd;
    return engine.ends[cylinder * this.endsPerCylinder]!.valveGear.dragTorque(angle, speed, gearPressures);
  }

  load(speed: number): number {
    return this.engine.load.torque(speed);
  }

  wallHeat(area: number, temperature: number, pressure: number, speed: number): number {
    return this.engine.wallHeat.flow(area, temperature, pressure, speed);
  }
}
