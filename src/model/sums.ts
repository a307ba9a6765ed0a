/**
 * Volumes and ledgers add up: what goes through passages, over pistons and into friction, as parts of the slopes. All sums
 * are linear in what they add, so that they serve for changes of flows as well as for flows.
 *
 * `timeRate` is dt/dx and `angleRate` dθ/dx of whatever variable x the slopes are against.
 */
import { ATMOSPHERE, FIRST_VOLUME, type Engine } from './engine.ts';
import type { Instant } from './instant.ts';
import type { Slots } from './slots.ts';
import { Waste } from './waste.ts';

/** A class, so that code compiled for one engine serves for the next. */
export class Sums {
  readonly waste: Waste;
  private readonly totals: boolean;
  /** By passage, the slots of the mass at either end, or −1 outside. */
  private readonly source: Int16Array;
  private readonly sink: Int16Array;
  private readonly firstPassage: number;
  private readonly firstEndEnergy: number;
  private readonly firstEndPlace: number;
  private readonly enthalpyIn: number;
  private readonly gasWork: number;
  private readonly wallHeat: number;
  private readonly firstWork: number;
  private readonly roomWork: number;

  constructor({ passages, volumes, ends }: Engine, slots: Slots, totals: boolean) {
    const slotOf = (place: number): number => (place < FIRST_VOLUME ? -1 : slots.mass(place - FIRST_VOLUME));
    const firstEnd = volumes.length - ends.length;
    this.waste = new Waste(ends, passages, slots);
    this.totals = totals;
    this.source = Int16Array.from(passages, ({ from }) => slotOf(from));
    this.sink = Int16Array.from(passages, ({ to }) => slotOf(to));
    this.firstPassage = slots.passageMass(0);
    this.firstEndEnergy = slots.energy(firstEnd);
    this.firstEndPlace = FIRST_VOLUME + firstEnd;
    this.enthalpyIn = slots.enthalpyIn;
    this.gasWork = slots.gasWork;
    this.wallHeat = slots.wallHeat;
    this.firstWork = slots.bearingWork;
    this.roomWork = slots.roomWork;
  }

  /** Mass [kg/s] and enthalpy [W] through every passage. */
  flows(massFlow: Float64Array, enthalpyFlow: Float64Array, timeRate: number, slopes: Float64Array): void {
    for (let i = 0; i < massFlow.length; i += 1)
      this.through(i, massFlow[i]! * timeRate, enthalpyFlow[i]! * timeRate, slopes);
  }

  /** Mass and enthalpy through one passage, per unit of x. */
  through(i: number, mass: number, enthalpy: number, slopes: Float64Array): void {
    const { totals, enthalpyIn } = this;
    const source = this.source[i]!;
    const sink = this.sink[i]!;
    if (source >= 0) {
      slopes[source]! -= mass;
      slopes[source + 1]! -= enthalpy;
    } else if (totals) slopes[enthalpyIn]! += enthalpy;
    if (sink >= 0) {
      slopes[sink]! += mass;
      slopes[sink + 1]! += enthalpy;
    } else if (totals) slopes[enthalpyIn]! -= enthalpy;
    if (totals) slopes[this.firstPassage + i]! += mass;
  }

  /** Work of the gas on the pistons and of the pistons on the room, heat of the walls, wasted air. */
  ends(
    { pressure, volumeRate, wallHeat, massFlow }: Instant,
    timeRate: number,
    angleRate: number,
    slopes: Float64Array,
  ): void {
    const { totals, firstEndEnergy, firstEndPlace } = this;
    for (let i = 0; i < volumeRate.length; i += 1) {
      const heat = wallHeat[i]! * timeRate;
      const work = pressure[firstEndPlace + i]! * volumeRate[i]! * angleRate;
      slopes[firstEndEnergy + 2 * i]! += heat - work;
      if (!totals) continue;
      slopes[this.gasWork]! += work;
      slopes[this.roomWork]! += pressure[ATMOSPHERE]! * volumeRate[i]! * angleRate;
      slopes[this.wallHeat]! += heat;
    }
    if (totals) this.waste.add(massFlow, timeRate, slopes);
  }

  /** Works that resist, along a path dθ ≥ 0, and that of gravity. */
  works(instant: Instant, pathRate: number, angleRate: number, slopes: Float64Array): void {
    const { firstWork } = this;
    if (!this.totals) return;
    slopes[firstWork] = instant.bearingTorque * pathRate;
    slopes[firstWork + 1] = instant.pistonTorque * pathRate;
    slopes[firstWork + 2] = instant.gearTorque * pathRate;
    slopes[firstWork + 3] = instant.loadTorque * pathRate;
    slopes[firstWork + 4] = instant.gravityTorque * angleRate;
  }
}
