/**
 * Where each unknown of the engine stands in the state vector.
 *
 * First what moves, then mass and energy of each gas volume, then the running totals of the ledgers: works, air blown
 * through, what all air brought with it, for each passage its net mass, and for leaks into a cylinder end what of it was
 * wasted. Nothing physical depends on a total.
 */

import * as place from '../kernel/state-slots.ts';

/** The same in every engine. */
export const SLOT = { crankAngle: place.CRANK_ANGLE, time: place.TIME, speed: place.SPEED } as const;

export interface Slots {
  /** Mass [kg] and internal energy [J] of a volume. */
  readonly mass: (volume: number) => number;
  readonly energy: (volume: number) => number;
  /** The totals begin here. */
  readonly firstTotal: number;
  /** Works so far [J]: of the gas on the pistons (absolute pressure), then what took it or gave to it. */
  readonly gasWork: number;
  readonly bearingWork: number;
  readonly pistonWork: number;
  readonly gearWork: number;
  readonly loadWork: number;
  readonly gravityWork: number;
  /** Work of the pistons on the air of the room, which they push back [J]. */
  readonly roomWork: number;
  readonly wallHeat: number;
  /** Air that went through admission and exhaust while both were open [kg]. */
  readonly blowThrough: number;
  /** Enthalpy [J] that came in with the air of all passages from outside, net. */
  readonly enthalpyIn: number;
  /** Net mass [kg] through a passage, positive from → to. */
  readonly passageMass: (passage: number) => number;
  /** Air that by a leak into a cylinder end got there and left straight by the open exhaust [kg]. */
  readonly passageWaste: (leak: number) => number;
  readonly dimension: number;
}

/** `leaksIn`: those of the passages that are leaks into cylinder ends. */
export function slotsFor(volumes: number, passages: number, leaksIn: readonly number[]): Slots {
  const firstTotal = place.FIRST_MASS + 2 * volumes;
  const firstPassage = firstTotal + place.FIRST_PASSAGE;
  const firstWaste = firstPassage + passages;
  return {
    mass: (volume) => place.FIRST_MASS + 2 * volume,
    energy: (volume) => place.FIRST_MASS + 2 * volume + 1,
    firstTotal,
    gasWork: firstTotal + place.GAS_WORK,
    bearingWork: firstTotal + place.BEARING_WORK,
    pistonWork: firstTotal + place.PISTON_WORK,
    gearWork: firstTotal + place.GEAR_WORK,
    loadWork: firstTotal + place.LOAD_WORK,
    gravityWork: firstTotal + place.GRAVITY_WORK,
    roomWork: firstTotal + place.ROOM_WORK,
    wallHeat: firstTotal + place.TOTAL_WALL_HEAT,
    blowThrough: firstTotal + place.BLOW_THROUGH,
    enthalpyIn: firstTotal + place.ENTHALPY_IN,
    passageMass: (passage) => firstPassage + passage,
    passageWaste: (leak) => {
      const i = leaksIn.indexOf(leak);
      if (i < 0) throw new Error(`passage ${leak} is no leak into a cylinder end`);
      return firstWaste + i;
    },
    dimension: firstWaste + leaksIn.length,
  };
}
