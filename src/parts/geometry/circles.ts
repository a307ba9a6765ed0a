/** Areas of circles that are partly covered, in closed form. */
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import { sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';

/**
 * Area [m²] of that part of a circle which lies within a height from its edge, 0 to 2a; a its radius. By the half angle φ
 * that the chord subtends, a² (φ − ½ sin 2φ), so that small areas keep their digits.
 */
export function segmentArea(a: number, height: number): number {
  const share = Math.min(1, Math.max(0, height / (2 * a)));
  const halfAngle = 2 * asin(Math.sqrt(share));
  return Math.max(0, a * a * (halfAngle - 0.5 * sin(2 * halfAngle)));
}

/** Area [m²] that two circles of radii a and b share, centres a distance apart. */
export function sharedCircleArea(a: number, b: number, apart: number): number {
  if (apart <= Math.abs(a - b)) return Math.PI * square(Math.min(a, b));
  const fromA = (square(apart) + square(a) - square(b)) / (2 * apart);
  return segmentArea(a, a - fromA) + segmentArea(b, b - (apart - fromA));
}
