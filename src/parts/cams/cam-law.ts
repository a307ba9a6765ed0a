/**
 * Rise laws of cams: lift s from 0 to 1 over u from 0 to 1, and the inverse.
 *
 * Source of the laws and their peak coefficients: machine-design texts (Norton, Cam Design; Shigley); the coefficients
 * are derived anew in the tests.
 */

export interface CamLaw {
  readonly name: string;
  lift(u: number): number;
}

const harmonic: CamLaw = { name: 'harmonic', lift: (u) => (1 - Math.cos(Math.PI * u)) / 2 };

const cycloidal: CamLaw = {
  name: 'cycloidal',
  lift: (u) => u - Math.sin(2 * Math.PI * u) / (2 * Math.PI),
};

const polynomial345: CamLaw = { name: '3-4-5 polynomial', lift: (u) => u ** 3 * (10 - 15 * u + 6 * u * u) };

/** Sine acceleration of quarter periods 1/8, 3/4, 1/8 of the rise. */
const modifiedSine: CamLaw = {
  name: 'modified sine',
  lift: (u) => {
    const scale = 1 / (Math.PI + 4);
    if (u < 1 / 8) return scale * (Math.PI * u - Math.sin(4 * Math.PI * u) / 4);
    if (u > 7 / 8) return scale * (4 + Math.PI * u - Math.sin(4 * Math.PI * u) / 4);
    return scale * (2 + Math.PI * u - (9 / 4) * Math.sin((Math.PI + 4 * Math.PI * u) / 3));
  },
};

export const camLaws: readonly CamLaw[] = [harmonic, cycloidal, polynomial345, modifiedSine];

export function camLawNamed(name: string): CamLaw {
  const law = camLaws.find((candidate) => candidate.name === name);
  if (law === undefined) throw new Error(`no cam law is registered as "${name}"`);
  return law;
}

/** The u at which the law reaches a lift in [0, 1], by bisection to the last bit; all laws rise monotonically. */
export function camAngleAtLift(law: CamLaw, lift: number): number {
  let low = 0;
  let high = 1;
  for (let i = 0; i < 60; i += 1) {
    const middle = (low + high) / 2;
    if (law.lift(middle) < lift) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
