/**
 * Helical compression spring of round wire. d wire, D mean diameter of the coils, n working coils, C = D/d:
 *
 *   k = G d⁴/(8 D³ n)                     rate
 *   τ = (1 + ½/C) · 8 F D/(π d³)          shear stress under a force F, direct shear included
 *   solid length of closed and ground ends = (n + 2) d
 *
 * Patented steel wire: G = 79.3 GPa; tensile strength at least 2060 MPa/(d/mm)^0.163 (music wire, ASTM A228; seen in two
 * calculators of spring wire). Source: Shigley, Mechanical Engineering Design, as in worked examples (tests/published).
 */
import { pow } from '../../numerics/elementary/power.ts';
import { cube, square } from '../../numerics/elementary/whole-powers.ts';

export interface HelicalSpring {
  readonly wire: number;
  readonly coilDiameter: number;
  readonly activeCoils: number;
}

export const SHEAR_MODULUS = 79.3e9;

/** [N/m] */
export function springRate(
  { wire, coilDiameter, activeCoils }: HelicalSpring,
  shearModulus = SHEAR_MODULUS,
): number {
  return (shearModulus * square(square(wire))) / (8 * cube(coilDiameter) * activeCoils);
}

/** [Pa] */
export function springStress({ wire, coilDiameter }: HelicalSpring, force: number): number {
  const index = coilDiameter / wire;
  return ((1 + 0.5 / index) * 8 * force * coilDiameter) / (Math.PI * cube(wire));
}

/** [m] */
export const solidLength = ({ wire, activeCoils }: HelicalSpring): number => (activeCoils + 2) * wire;

/** [Pa] for a wire diameter [m]. */
export const wireStrength = (wire: number): number => 2060e6 / pow(wire * 1e3, 0.163);

/**
 * Shear stress that a valve spring of such wire may see at full lift, as a share of the tensile strength. Common practice,
 * no source: 45 % is quoted for steady loads; a valve spring is worked millions of times.
 */
export const ALLOWED_SHARE = 0.4;
