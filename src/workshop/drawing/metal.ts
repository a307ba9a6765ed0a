/** Metal that has to be left, and room that screws take. Common practice, no source, where nothing else is said. */

/** Between an opening and an edge, and between openings [m]. */
export const WALL = 3e-3;

/** Hole that a screw passes freely: a tenth over its thread, up to the next tenth of a millimetre. */
export const clearanceHole = (nominal: number): number => Math.ceil(nominal * 1.1e4 - 1e-6) / 1e4;

/** Head of a hexagon screw across its corners, or its washer. */
export const headDiameter = (nominal: number): number => 1.9 * nominal;
