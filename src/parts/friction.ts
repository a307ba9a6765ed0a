/**
 * Friction of the running gear.
 *
 *   bearings:  τ = τ_c + (τ_s − τ_c) exp(−(ω/ω_s)²) + c_v ω      (Stribeck form with viscous part)
 *   piston:    F = F₀ + k |Δp|,  acting through |x′|              (rings and cups press harder under pressure)
 *   gland:     the same form with the gauge pressure in the crank end
 *
 * Magnitudes only; the system gives them the sign of the motion. At rest the same engine holds up to the break-away
 * torque τ_s plus the piston force on its lever arm. Common practice, no source, for the values.
 */
import { group, quantity } from '../kinds/describe.ts';
import type { Values } from '../kinds/parameter.ts';
import type { Complaint } from '../kinds/kind.ts';
import { exp } from '../numerics/elementary/exponential.ts';

const RPM = (2 * Math.PI) / 60;

/** exp(−6.5²) is 5e-19. */
const SPEEDS_TO_NOTHING = 6.5;

export const frictionParameters = {
  running_torque: quantity(
    'torque',
    { min: 0, max: 1000 },
    '0.15 N m',
    'Torque the bearings take while turning slowly. Hang a weight on the flywheel rim that just keeps it turning.',
    'Rod uncoupled, engine open to the room. Tie a cord round the flywheel rim and hang weights on it; ' +
      'start the wheel gently by hand and find the weight that just keeps it turning. Newtons (9.81 per ' +
      'kilogram) times the radius of the cord.',
  ),
  breakaway_torque: quantity(
    'torque',
    { min: 0, max: 1000 },
    '0.25 N m',
    'Torque that just moves the engine from rest, piston force apart. Not below the running torque.',
    'The same cord and the same radius, from rest: the weight that just moves the wheel off. Try a few ' +
      'places of the crank and take the largest.',
  ),
  stribeck_speed: quantity(
    'rotational speed',
    { min: 0.01 * RPM, max: 10_000 * RPM, default: 20 * RPM },
    '20 rpm',
    'Speed at which break-away friction has mostly given way to running friction.',
  ),
  viscous_torque: quantity(
    'torque per speed',
    { min: 0, max: 100, default: 0 },
    '1 mN m s',
    'Extra bearing torque per speed, from oil and windage.',
    'Leave it out at first. It shows when the wheel, spun by hand with the rod uncoupled, slows down ' +
      'faster from high speed than the running torque explains: extra torque = J times loss of speed ' +
      '[rad/s] in a second, less the running torque; divide by the speed [rad/s].',
  ),
  piston_force: quantity(
    'force',
    { min: 0, max: 10_000, default: 0 },
    '5 N',
    'Force that slides the piston in its bore with no pressure on it.',
    'Rod uncoupled, ports open: pull the piston along with a spring balance and read it while it moves.',
  ),
  piston_force_per_pressure: quantity(
    'force per pressure',
    { min: 0, max: 0.1, default: 0 },
    '4 N/bar',
    'Extra sliding force per pressure across the piston; cups and sprung rings grow with pressure.',
    'Zero for a plain lapped piston. For a cup or a ring repeat the pull with a gentle, known pressure ' +
      'behind the piston and a stop in front of it: the added force over that pressure, less the push of ' +
      'the pressure itself.',
  ),
  gland_force: quantity(
    'force',
    { min: 0, max: 10_000, default: 0 },
    '4 N',
    'Force that slides the piston rod of a double-acting cylinder through its gland, with no pressure on it.',
    'Spring balance on the rod with the piston off, gland tightened as in use.',
  ),
  gland_force_per_pressure: quantity(
    'force per pressure',
    { min: 0, max: 0.1, default: 0 },
    '2 N/bar',
    'Extra gland force per pressure in the crank end.',
    'Rarely worth a test: 0 for a plain bush. For soft packing repeat the pull with known pressure in ' +
      'the crank end; take off the push on the rod.',
  ),
};

export const friction = group('What it costs to turn the engine over.', frictionParameters);

export type Friction = Values<typeof frictionParameters>;

/** Bearing torque [N m] at speed ω ≥ 0 [rad/s]. */
export function bearingTorque(law: Friction, speed: number): number {
  const share = speed / law.stribeck_speed;
  // Beyond, less is left than the last digit of the running torque.
  const boundary = share > SPEEDS_TO_NOTHING ? 0 : exp(-share * share);
  return (
    law.running_torque + (law.breakaway_torque - law.running_torque) * boundary + law.viscous_torque * speed
  );
}

/** Force [N] that resists the piston with a pressure difference [Pa] across it. */
export function pistonFriction(law: Friction, difference: number): number {
  return law.piston_force + law.piston_force_per_pressure * Math.abs(difference);
}

/** Force [N] that resists the piston rod in its gland under a gauge pressure [Pa] in the crank end. */
export function glandFriction(law: Friction, gaugePressure: number): number {
  return law.gland_force + law.gland_force_per_pressure * Math.abs(gaugePressure);
}

export function frictionComplaints(law: Friction): readonly Complaint[] {
  if (law.breakaway_torque >= law.running_torque) return [];
  return [
    {
      path: ['breakaway_torque'],
      expected: `at least the running torque, ${law.running_torque} N m`,
      received: `${law.breakaway_torque} N m`,
      hint: 'An engine never moves off more easily than it turns.',
    },
  ];
}
