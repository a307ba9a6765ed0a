/** Lengths and angles as complaints say them. */

export const mm = (length: number): string => `${(length * 1e3).toFixed(2)} mm`;
export const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)} deg`;
