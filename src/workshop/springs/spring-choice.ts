/**
 * A spring that keeps a spool on its cam up to a speed: what is given is kept, what is not is chosen.
 *
 * Wanted at every angle: F₀ + k s ≥ m (−s″) ω² at the design speed ω, the top speed times its margin. Without a given
 * preload it is half of the force at full lift. Wire from the usual sizes, the thinnest with 3 to 15 working coils whose
 * stress at the end of its travel stays below the allowed; coils in halves. Half, coil numbers and the least preload of
 * five times the weight are common practice, no source.
 */
import { cube, square } from '../../numerics/elementary/whole-powers.ts';
import type { Cam } from '../../parts/cams/cam.ts';
import { liftedPlaces, type Loading } from './follower-force.ts';
import {
  ALLOWED_SHARE,
  SHEAR_MODULUS,
  solidLength,
  springRate,
  springStress,
  wireStrength,
  type HelicalSpring,
} from './helical-spring.ts';

export interface SpringWish {
  readonly cam: Cam;
  readonly mass: number;
  /** Crank speed to hold on to [rad/s], margin included. */
  readonly speed: number;
  /** Travel beyond the shut position that the spring must allow [m]. */
  readonly travel: number;
  /** What the coils go round [m]. */
  readonly pilot: number;
  readonly wire: number | undefined;
  readonly coilDiameter: number | undefined;
  readonly activeCoils: number | undefined;
  readonly preload: number | undefined;
}

export interface ChosenSpring extends HelicalSpring {
  readonly loading: Loading;
  /** Force [N] and stress [Pa] at the end of its travel, and what the wire is allowed [Pa]. */
  readonly largestForce: number;
  readonly largestStress: number;
  readonly allowedStress: number;
  readonly freeLength: number;
  readonly fittedLength: number;
  readonly solidLength: number;
}

/** Usual wire diameters [mm]. */
const WIRES = [
  0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.1, 1.2, 1.4, 1.6, 1.8, 2, 2.2, 2.5, 2.8, 3.2, 3.6, 4, 4.5, 5, 6,
];
const [FEWEST, MOST] = [3, 15];
const GRAVITY = 9.81;

interface Need {
  readonly lift: number;
  readonly force: number;
}

/** Forces the spring must give at the places where the follower would rather fly on. */
function needs({ cam, mass, speed }: SpringWish): Need[] {
  return liftedPlaces(cam)
    .filter(({ bend }) => bend < 0)
    .map(({ lift, bend }) => ({ lift, force: -mass * bend * square(speed) }));
}

const largest = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b), 0);

/** Preload that meets every need with a spring of a rate; at least what lifts the spool against friction. */
function preloadFor(wish: SpringWish, rate: number): number {
  const least = 5 * wish.mass * GRAVITY;
  return Math.max(least, largest(needs(wish).map(({ lift, force }) => force - rate * lift)));
}

/** Rate to look for [N/m]. */
function wantedRate(wish: SpringWish): number {
  const full = wish.cam.lift - wish.cam.lash;
  const given = wish.preload;
  if (given !== undefined) {
    const rates = needs(wish).map(({ lift, force }) => (force - given) / lift);
    return Math.max(largest(rates), (0.2 * given) / full);
  }
  const atFullLift = largest(needs(wish).map(({ lift, force }) => force / (0.5 + (0.5 * lift) / full)));
  return (0.5 * Math.max(atFullLift, 10 * wish.mass * GRAVITY)) / full;
}

function sprung(wish: SpringWish, spring: HelicalSpring): ChosenSpring {
  const rate = springRate(spring);
  const preload = wish.preload ?? preloadFor(wish, rate);
  const largestForce = preload + rate * wish.travel;
  const solid = solidLength(spring);
  // A tenth of the travel, and no less than half a millimetre, before the coils touch.
  const fittedLength = solid + wish.travel + Math.max(0.5e-3, 0.1 * wish.travel);
  return {
    ...spring,
    loading: { preload, rate, mass: wish.mass },
    largestForce,
    largestStress: springStress(spring, largestForce),
    allowedStress: ALLOWED_SHARE * wireStrength(spring.wire),
    freeLength: fittedLength + preload / rate,
    fittedLength,
    solidLength: solid,
  };
}

/** Undefined when no usual wire does it. */
export function chooseSpring(wish: SpringWish): ChosenSpring | undefined {
  const rate = wantedRate(wish);
  const wires = wish.wire === undefined ? WIRES.map((own) => own * 1e-3) : [wish.wire];
  for (const wire of wires) {
    // Half a millimetre of air all round what the coils go over.
    const coilDiameter = wish.coilDiameter ?? wish.pilot + 1e-3 + wire;
    const wanted = (SHEAR_MODULUS * square(square(wire))) / (8 * cube(coilDiameter) * rate);
    // Fewer coils make it stiffer, never softer than wanted.
    const activeCoils = wish.activeCoils ?? Math.min(MOST, Math.floor(2 * wanted) / 2);
    const chosen = activeCoils > 0 ? sprung(wish, { wire, coilDiameter, activeCoils }) : undefined;
    if (chosen === undefined) continue;
    const enough = wish.activeCoils !== undefined || activeCoils >= FEWEST;
    if (enough && chosen.largestStress <= chosen.allowedStress) return chosen;
  }
  return undefined;
}
