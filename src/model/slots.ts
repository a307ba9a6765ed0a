/**
 * Where each unknown of the engine stands in the state vector.
 *
 * First what moves, then mass and energy of each gas volume, then the running totals of the ledgers: works, air blown
 * through, and for each passage its net mass and enthalpy and the air it wasted. Nothing physical depends on a total.
 */

/** The same in every engine. */
export const SLOT = { crankAngle: 0, time: 1, speed: 2 } as const;

const FIRST_VOLUME = 3;

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
  /** Net mass [kg] and enthalpy [J] through a passage, positive from → to. */
  readonly passageMass: (passage: number) => number;
  readonly passageEnthalpy: (passage: number) => number;
  /** Air that leaked by it into a cylinder end and left straight by the open exhaust [kg]. */
  readonly passageWaste: (passage: number) => number;
  readonly dimension: number;
}

export function slotsFor(volumes: number, passages: number): Slots {
  const firstTotal = FIRST_VOLUME + 2 * volumes;
  const firstPassage = firstTotal + 9;
  return {
    mass: (volume) => FIRST_VOLUME + 2 * volume,
    energy: (volume) => FIRST_VOLUME + 2 * volume + 1,
    firstTotal,
    gasWork: firstTotal,
    bearingWork: firstTotal + 1,
    pistonWork: firstTotal + 2,
    gearWork: firstTotal + 3,
    loadWork: firstTotal + 4,
    gravityWork: firstTotal + 5,
    roomWork: firstTotal + 6,
    wallHeat: firstTotal + 7,
    blowThrough: firstTotal + 8,
    passageMass: (passage) => firstPassage + 3 * passage,
    passageEnthalpy: (passage) => firstPassage + 3 * passage + 1,
    passageWaste: (passage) => firstPassage + 3 * passage + 2,
    dimension: firstPassage + 3 * passages,
  };
}
