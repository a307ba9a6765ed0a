/** Where each unknown of an engine stands in its state: what moves, then mass and energy of each volume, then the totals. */
export const CRANK_ANGLE = 0;
export const TIME = 1;
export const SPEED = 2;
export const FIRST_MASS = 3;

/** Counted from the first total. */
export const GAS_WORK = 0;
export const BEARING_WORK = 1;
export const PISTON_WORK = 2;
export const GEAR_WORK = 3;
export const LOAD_WORK = 4;
export const GRAVITY_WORK = 5;
export const ROOM_WORK = 6;
export const TOTAL_WALL_HEAT = 7;
export const BLOW_THROUGH = 8;
export const ENTHALPY_IN = 9;
export const FIRST_PASSAGE = 10;
