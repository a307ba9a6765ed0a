/**
 * Where each unknown of the engine stands in the state vector.
 *
 * First what moves, then two numbers per gas volume, then the running totals of the ledgers: net mass and enthalpy
 * through each passage, the works, and the air that was wasted although it went through the cylinder.
 */

export const SLOT = {
  crankAngle: 0,
  time: 1,
  speed: 2,
  chestMass: 3,
  chestEnergy: 4,
  cylinderMass: 5,
  cylinderEnergy: 6,
  /** Works so far [J]: of the gas on the piston (absolute pressure), then what took it. */
  gasWork: 7,
  bearingWork: 8,
  pistonWork: 9,
  gearWork: 10,
  loadWork: 11,
  wallHeat: 12,
  /** Air that went through admission and exhaust while both were open [kg]. */
  blowThrough: 13,
  /** Air that leaked past a shut admission valve straight out of the open exhaust [kg]. */
  leakThrough: 14,
} as const;

/** The physical unknowns; everything from here on only adds up. */
export const FIRST_TOTAL = SLOT.gasWork;

const FIRST_PASSAGE = SLOT.leakThrough + 1;

export const passageMassSlot = (passage: number): number => FIRST_PASSAGE + 2 * passage;
export const passageEnthalpySlot = (passage: number): number => FIRST_PASSAGE + 2 * passage + 1;
export const dimension = (passages: number): number => FIRST_PASSAGE + 2 * passages;
