/**
 * Volumes and ledgers add up: what goes through passages, over pistons and into friction, as parts of the slopes. All sums
 * are linear in what they add, so that they serve for changes of flows as well as for flows.
 *
 * `timeRate` is dt/dx and `angleRate` dθ/dx of whatever variable x the slopes are against.
 */
import { FIRST_VOLUME, type Engine, type WorkingEnd } from './engine.ts';
import type { Instant } from './instant.ts';
import type { Slots } from './slots.ts';

export interface Sums {
  /** Mass [kg/s] and enthalpy [W] through every passage. */
  flows(massFlow: Float64Array, enthalpyFlow: Float64Array, timeRate: number, slopes: Float64Array): void;
  /** Work of the gas on the pistons, heat of the walls, wasted air. */
  ends(instant: Instant, timeRate: number, angleRate: number, slopes: Float64Array): void;
  /** Works that resist, along a path dθ ≥ 0, and that of gravity. */
  works(instant: Instant, pathRate: number, angleRate: number, slopes: Float64Array): void;
  /** Air that leaves by the exhaust without having pushed: straight from the open admission, then from leaks. */
  waste(massFlow: Float64Array, timeRate: number, slopes: Float64Array): void;
}

export function sums(engine: Engine, slots: Slots, totals: boolean): Sums {
  const { passages, ends, volumes } = engine;
  /** Passages that meet in a volume, volume by volume, with +1 for those that lead into it. */
  const mouthsOf = volumes.map((_, v) =>
    passages.flatMap(({ from, to }, passage) => [
      ...(to === v + FIRST_VOLUME ? [{ passage, way: 1 }] : []),
      ...(from === v + FIRST_VOLUME ? [{ passage, way: -1 }] : []),
    ]),
  );
  const mouths = Uint16Array.from(mouthsOf.flat(), ({ passage }) => passage);
  const ways = Int8Array.from(mouthsOf.flat(), ({ way }) => way);
  const firstMouth = Uint16Array.from([0, ...volumes.map((_, v) => mouthsOf.slice(0, v + 1).flat().length)]);
  const massSlot = Uint16Array.from(volumes, (_, i) => slots.mass(i));
  const passageSlot = Uint16Array.from(passages, (_, i) => slots.passageMass(i));
  const firstEnd = volumes.length - ends.length;

  /** What a leak brings into an end now, if it does not rather take from it. */
  const inflow = (massFlow: Float64Array, leak: number, end: WorkingEnd): number =>
    Math.max(0, passages[leak]!.to === end.place ? massFlow[leak]! : -massFlow[leak]!);

  const waste = (massFlow: Float64Array, timeRate: number, slopes: Float64Array): void => {
    for (const end of ends) {
      const out = Math.max(0, massFlow[end.exhaustPassage]!);
      const straight = Math.min(out, Math.max(0, massFlow[end.admissionPassage]!));
      slopes[slots.blowThrough]! += straight * timeRate;
      let leaked = 0;
      for (const leak of end.leaksIn) leaked += inflow(massFlow, leak, end);
      if (leaked === 0) continue;
      const wasted = Math.min(1, (out - straight) / leaked) * timeRate;
      for (const leak of end.leaksIn)
        slopes[slots.passageWaste(leak)]! += wasted * inflow(massFlow, leak, end);
    }
  };

  return {
    flows(massFlow, enthalpyFlow, timeRate, slopes) {
      for (let v = 0; v < volumes.length; v += 1) {
        let mass = 0;
        let enthalpy = 0;
        for (let k = firstMouth[v]!; k < firstMouth[v + 1]!; k += 1) {
          const i = mouths[k]!;
          mass += ways[k]! * (massFlow[i]! * timeRate);
          enthalpy += ways[k]! * (enthalpyFlow[i]! * timeRate);
        }
        slopes[massSlot[v]!]! += mass;
        slopes[massSlot[v]! + 1]! += enthalpy;
      }
      if (!totals) return;
      for (let i = 0; i < passages.length; i += 1) {
        slopes[passageSlot[i]!]! += massFlow[i]! * timeRate;
        slopes[passageSlot[i]! + 1]! += enthalpyFlow[i]! * timeRate;
      }
    },
    ends({ pressure, volumeRate, wallHeat, massFlow }, timeRate, angleRate, slopes) {
      for (let i = 0; i < ends.length; i += 1) {
        const heat = wallHeat[i]! * timeRate;
        const work = pressure[ends[i]!.place]! * volumeRate[i]! * angleRate;
        slopes[massSlot[firstEnd + i]! + 1]! += heat - work;
        if (!totals) continue;
        slopes[slots.gasWork]! += work;
        slopes[slots.wallHeat]! += heat;
      }
      if (totals) waste(massFlow, timeRate, slopes);
    },
    works(instant, pathRate, angleRate, slopes) {
      if (!totals) return;
      slopes[slots.bearingWork] = instant.bearingTorque * pathRate;
      slopes[slots.pistonWork] = instant.pistonTorque * pathRate;
      slopes[slots.gearWork] = instant.gearTorque * pathRate;
      slopes[slots.loadWork] = instant.loadTorque * pathRate;
      slopes[slots.gravityWork] = instant.gravityTorque * angleRate;
    },
    waste,
  };
}
