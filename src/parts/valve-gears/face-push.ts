/**
 * What the air in the film between two faces does to them.
 *
 * Straight film from p₁ to p₂: p² falls evenly (gas/gap.ts), so its mean pressure is ⅔ (p₁² + p₁p₂ + p₂²)/(p₁ + p₂).
 * Derived.
 *
 * Round hole of radius a in a face that ends, round about, at a radius b: the push over the room's pressure is that on
 *
 *   A = π (b² − a²)/(2 ln(b/a))
 *
 * which is the area of a hydrostatic thrust bearing with a pressure that falls with the logarithm of the radius
 * (lubrication texts; from memory). A compressible film keeps more pressure further out, so the true push is larger, by up
 * to a fifth at some bars.
 */
import { log } from '../../numerics/elementary/logarithm.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';

/** Mean pressure [Pa] of a straight film. */
export const meanFilmPressure = (p1: number, p2: number): number =>
  (2 * (p1 * p1 + p1 * p2 + p2 * p2)) / (3 * (p1 + p2));

/** Area [m²] on which the gauge pressure in a hole parts the faces round it, that end `reach` from its centre [m]. */
export function pushArea(holeRadius: number, reach: number): number {
  // A rim as close as the hole's own edge would leave the hole alone.
  if (reach <= holeRadius * (1 + 1e-9)) return Math.PI * square(holeRadius);
  return (Math.PI * (square(reach) - square(holeRadius))) / (2 * log(reach / holeRadius));
}
