/**
 * Rise laws of cams: lift s from 0 to 1 over u from 0 to 1, its first two derivatives, and the inverse.
 *
 * Source of the laws and their peak coefficients: machine-design texts (Norton, Cam Design; Shigley); the coefficients
 * are derived anew in the tests.
 */
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { cube, square } from '../../numerics/elementary/whole-powers.ts';

export interface CamLaw {
  readonly name: string;
  lift(u: number): number;
  /** ds/du. */
  slope(u: number): number;
  /** d²s/du². Laws that begin with a jump have their inner value at the ends. */
  bend(u: number): number;
  /** The u at which it reaches a lift in [0, 1], of a law that has a formula for it. */
  angleAtLift?(lift: number): number;
}

const harmonic: CamLaw = {
  name: 'harmonic',
  lift: (u) => (1 - cos(Math.PI * u)) / 2,
  slope: (u) => (Math.PI / 2) * sin(Math.PI * u),
  bend: (u) => (square(Math.PI) / 2) * cos(Math.PI * u),
  angleAtLift: (lift) => (2 / Math.PI) * asin(Math.sqrt(lift)),
};

const cycloidal: CamLaw = {
  name: 'cycloidal',
  lift: (u) => u - sin(2 * Math.PI * u) / (2 * Math.PI),
  slope: (u) => 1 - cos(2 * Math.PI * u),
  bend: (u) => 2 * Math.PI * sin(2 * Math.PI * u),
};

const polynomial345: CamLaw = {
  name: '3-4-5 polynomial',
  lift: (u) => cube(u) * (10 - 15 * u + 6 * u * u),
  slope: (u) => 30 * u * u * square(1 - u),
  bend: (u) => 60 * u * (1 - u) * (1 - 2 * u),
};

/** Sine acceleration of quarter periods 1/8, 3/4, 1/8 of the rise. */
const modifiedSine: CamLaw = {
  name: 'modified sine',
  lift: (u) => {
    const scale = 1 / (Math.PI + 4);
    if (u < 1 / 8) return scale * (Math.PI * u - sin(4 * Math.PI * u) / 4);
    if (u > 7 / 8) return scale * (4 + Math.PI * u - sin(4 * Math.PI * u) / 4);
    return scale * (2 + Math.PI * u - (9 / 4) * sin((Math.PI + 4 * Math.PI * u) / 3));
  },
  slope: (u) => {
    const scale = Math.PI / (Math.PI + 4);
    if (u < 1 / 8 || u > 7 / 8) return scale * (1 - cos(4 * Math.PI * u));
    return scale * (1 - 3 * cos((Math.PI + 4 * Math.PI * u) / 3));
  },
  bend: (u) => {
    const scale = (4 * square(Math.PI)) / (Math.PI + 4);
    if (u < 1 / 8 || u > 7 / 8) return scale * sin(4 * Math.PI * u);
    return scale * sin((Math.PI + 4 * Math.PI * u) / 3);
  },
};

export const camLaws: readonly CamLaw[] = [harmonic, cycloidal, polynomial345, modifiedSine];

export function camLawNamed(name: string): CamLaw {
  const law = camLaws.find((candidate) => candidate.name === name);
  if (law === undefined) throw new Error(`no cam law is registered as "${name}"`);
  return law;
}

/** The u at which the law reaches a lift in [0, 1], else by bisection to the last bit; all laws rise monotonically. */
export function camAngleAtLift(law: CamLaw, lift: number): number {
  if (law.angleAtLift) return law.angleAtLift(lift);
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (law.lift(middle) < lift) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
