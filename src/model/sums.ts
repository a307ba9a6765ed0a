/**
 * Volumes and ledgers add up: what goes through passages, over pistons and into friction, as parts of the slopes. All sums
 * are linear in what they add, so that they serve for changes of flows as well as for flows.
 *
 * `timeRate` is dt/dx and `angleRate` dθ/dx of whatever variable x the slopes are against.
 */
import { ATMOSPHERE, FIRST_VOLUME, type Engine, type WorkingEnd } from './engine.ts';
import type { Instant } from './instant.ts';
import type { Slots } from './slots.ts';

/** A class, so that code compiled for one engine serves for the next. */
export class Sums {
  private readonly engine: Engine;
  private readonly slots: Slots;
  private readonly totals: boolean;
  /** Passages that meet in a volume, volume by volume, with +1 for those that lead into it. */
  private readonly mouths: Uint16Array;
  private readonly ways: Int8Array;
  private readonly firstMouth: Uint16Array;
  private readonly firstMass: number;
  private readonly firstPassage: number;

  constructor(engine: Engine, slots: Slots, totals: boolean) {
    const { passages, volumes } = engine;
    const mouthsOf = volumes.map((_, v) =>
      passages.flatMap(({ from, to }, passage) => [
        ...(to === v + FIRST_VOLUME ? [{ passage, way: 1 }] : []),
        ...(from === v + FIRST_VOLUME ? [{ passage, way: -1 }] : []),
      ]),
    );
    this.engine = engine;
    this.slots = slots;
    this.totals = totals;
    this.mouths = Uint16Array.from(mouthsOf.flat(), ({ passage }) => passage);
    this.ways = Int8Array.from(mouthsOf.flat(), ({ way }) => way);
    this.firstMouth = Uint16Array.from([0, ...volumes.map((_, v) => mouthsOf.slice(0, v + 1).flat().length)]);
    this.firstMass = slots.mass(0);
    this.firstPassage = slots.passageMass(0);
  }

  /** Mass [kg/s] and enthalpy [W] through every passage. */
  flows(massFlow: Float64Array, enthalpyFlow: Float64Array, timeRate: number, slopes: Float64Array): void {
    const { mouths, ways, firstMouth, firstMass, firstPassage } = this;
    for (let v = 0; v < firstMouth.length - 1; v += 1) {
      let mass = 0;
      let enthalpy = 0;
      for (let k = firstMouth[v]!; k < firstMouth[v + 1]!; k += 1) {
        const i = mouths[k]!;
        mass += ways[k]! * (massFlow[i]! * timeRate);
        enthalpy += ways[k]! * (enthalpyFlow[i]! * timeRate);
      }
      slopes[firstMass + 2 * v]! += mass;
      slopes[firstMass + 2 * v + 1]! += enthalpy;
    }
    if (!this.totals) return;
    for (let i = 0; i < massFlow.length; i += 1) {
      slopes[firstPassage + 3 * i]! += massFlow[i]! * timeRate;
      slopes[firstPassage + 3 * i + 1]! += enthalpyFlow[i]! * timeRate;
    }
  }

  /** Work of the gas on the pistons, heat of the walls, wasted air. */
  ends(
    { pressure, volumeRate, wallHeat, massFlow }: Instant,
    timeRate: number,
    angleRate: number,
    slopes: Float64Array,
  ): void {
    const { slots, totals } = this;
    const { ends, volumes } = this.engine;
    const firstEnergy = this.firstMass + 2 * (volumes.length - ends.length) + 1;
    for (let i = 0; i < ends.length; i += 1) {
      const heat = wallHeat[i]! * timeRate;
      const work = pressure[ends[i]!.place]! * volumeRate[i]! * angleRate;
      slopes[firstEnergy + 2 * i]! += heat - work;
      if (!totals) continue;
      slopes[slots.gasWork]! += work;
      slopes[slots.wallHeat]! += heat;
    }
    if (totals) this.waste(massFlow, timeRate, slopes);
  }

  /** Works that resist, along a path dθ ≥ 0, that of gravity, and that on the room. */
  works(instant: Instant, pathRate: number, angleRate: number, slopes: Float64Array): void {
    const { slots, engine } = this;
    const { pressure, volumeRate } = instant;
    if (!this.totals) return;
    slopes[slots.bearingWork] = instant.bearingTorque * pathRate;
    slopes[slots.pistonWork] = instant.pistonTorque * pathRate;
    slopes[slots.gearWork] = instant.gearTorque * pathRate;
    slopes[slots.loadWork] = instant.loadTorque * pathRate;
    slopes[slots.gravityWork] = instant.gravityTorque * angleRate;
    const room = pressure[ATMOSPHERE]! * angleRate;
    for (let i = 0; i < engine.ends.length; i += 1) slopes[slots.roomWork]! += room * volumeRate[i]!;
  }

  /** Air that leaves by the exhaust without having pushed: straight from the open admission, then from leaks. */
  waste(massFlow: Float64Array, timeRate: number, slopes: Float64Array): void {
    const { slots } = this;
    for (const end of this.engine.ends) {
      const out = Math.max(0, massFlow[end.exhaustPassage]!);
      const straight = Math.min(out, Math.max(0, massFlow[end.admissionPassage]!));
      slopes[slots.blowThrough]! += straight * timeRate;
      let leaked = 0;
      for (const leak of end.leaksIn) leaked += this.inflow(massFlow, leak, end);
      if (leaked === 0) continue;
      const wasted = Math.min(1, (out - straight) / leaked) * timeRate;
      for (const leak of end.leaksIn)
        slopes[slots.passageWaste(leak)]! += wasted * this.inflow(massFlow, leak, end);
    }
  }

  /** What a leak brings into an end now, if it does not rather take from it. */
  private inflow(massFlow: Float64Array, leak: number, end: WorkingEnd): number {
    const { to } = this.engine.passages[leak]!;
    return Math.max(0, to === end.place ? massFlow[leak]! : -massFlow[leak]!);
  }
}
