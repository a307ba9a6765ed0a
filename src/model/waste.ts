/**
 * Air that leaves by the exhaust without having pushed: straight from the open admission, then from leaks. No plain sum of
 * flows, but of the first degree in them.
 */
import type { EnginePassage, WorkingEnd } from './engine.ts';
import type { Slots } from './slots.ts';

/** A class, so that code compiled for one engine serves for the next. */
export class Waste {
  private readonly blowThrough: number;
  /** By end. */
  private readonly admission: Uint8Array;
  private readonly exhaust: Uint8Array;
  /** Leaks into ends: those of end i from `firstLeak[i]` up to `firstLeak[i + 1]`, with +1 for those that lead into it. */
  private readonly leak: Uint8Array;
  private readonly way: Int8Array;
  private readonly slot: Uint16Array;
  private readonly firstLeak: Uint8Array;
  /** Each once; a leak may be of two ends. */
  private readonly slots: Uint16Array;

  constructor(ends: readonly WorkingEnd[], passages: readonly EnginePassage[], slots: Slots) {
    const leaks = ends.flatMap(({ place, leaksIn }) =>
      leaksIn.map((leak) => ({ leak, way: passages[leak]!.to === place ? 1 : -1 })),
    );
    this.blowThrough = slots.blowThrough;
    this.admission = Uint8Array.from(ends, ({ admissionPassage }) => admissionPassage);
    this.exhaust = Uint8Array.from(ends, ({ exhaustPassage }) => exhaustPassage);
    this.leak = Uint8Array.from(leaks, ({ leak }) => leak);
    this.way = Int8Array.from(leaks, ({ way }) => way);
    this.slot = Uint16Array.from(leaks, ({ leak }) => slots.passageWaste(leak));
    this.slots = Uint16Array.from(new Set(this.slot));
    this.firstLeak = new Uint8Array(ends.length + 1);
    for (const [i, { leaksIn }] of ends.entries())
      this.firstLeak[i + 1] = this.firstLeak[i]! + leaksIn.length;
  }

  /** Adds what flows [kg/s] waste. */
  add(massFlow: Float64Array, timeRate: number, slopes: Float64Array): void {
    const { admission, exhaust, blowThrough, leak, way, slot, firstLeak } = this;
    for (let i = 0; i < exhaust.length; i += 1) {
      const out = Math.max(0, massFlow[exhaust[i]!]!);
      const straight = Math.min(out, Math.max(0, massFlow[admission[i]!]!));
      slopes[blowThrough]! += straight * timeRate;
      let leaked = 0;
      for (let k = firstLeak[i]!; k < firstLeak[i + 1]!; k += 1)
        leaked += Math.max(0, way[k]! * massFlow[leak[k]!]!);
      if (leaked === 0) continue;
      const wasted = Math.min(1, (out - straight) / leaked) * timeRate;
      for (let k = firstLeak[i]!; k < firstLeak[i + 1]!; k += 1)
        slopes[slot[k]!]! += wasted * Math.max(0, way[k]! * massFlow[leak[k]!]!);
    }
  }

  /** Turns what has been added to `column` for flows moved by a step of an unknown into the change per unit of it. */
  toChange(column: Float64Array, slopes: Float64Array, step: number): void {
    const { blowThrough, slots } = this;
    column[blowThrough] = (column[blowThrough]! - slopes[blowThrough]!) / step;
    for (const at of slots) column[at] = (column[at]! - slopes[at]!) / step;
  }
}
