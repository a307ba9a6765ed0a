/**
 * Flat slide valve: a hollow block that an eccentric pushes to and fro over the cylinder port and the exhaust port, in a
 * chest full of air. Motion, openings and lands: slide-valve.ts.
 *
 * Leaks through the gap of height h under the valve, as straight slits (S = width/length, gas/gap.ts):
 *   past the steam lap:    chest → cylinder, S = port length/land + 2 × port width/rim  (the port's two ends)
 *   past the exhaust lap:  cylinder → exhaust, S = port length/land
 *   under the rim:         chest → exhaust, S = (2 × cavity length + port length)/rim  (two sides and the far end)
 * Assumes that the port face reaches as far as the valve does; corners are not counted.
 *
 * Rubbing: the given force, and μ times what the chest presses the valve on its face with (pressing-force.ts).
 */
import { pureNumber, quantity } from '../../kinds/describe.ts';
import { kindOf, type Complaint } from '../../kinds/kind.ts';
import type { Values } from '../../kinds/parameter.ts';
import { filmResistance } from '../../gas/gap.ts';
import { measuring } from '../measuring.ts';
import type { PartContext } from '../part-context.ts';
import { gap, type Passage } from '../passage.ts';
import { slideValveMaking } from './flat-slide-valve-making.ts';
import { mm } from './in-words.ts';
import { pressingForce } from './pressing-force.ts';
import { slideValveComplaints } from './slide-valve-complaints.ts';
import { slideValveGear } from './slide-valve-gear.ts';
import { slideValveOf, slideValveParameters } from './slide-valve-parameters.ts';
import { exhaustLand, exhaustLandBends, overTravel, steamLand, steamLandBends } from './slide-valve.ts';
import type { ValveGear } from './valve-gear.ts';

export const flatSlideValveParameters = {
  ...slideValveParameters,
  port_length: quantity(
    'length',
    { min: 5e-4, max: 0.3 },
    '14 mm',
    'Length of the cylinder port across the travel.',
    'Callipers on the port face.',
  ),
  cavity_length: quantity(
    'length',
    { min: 1e-3, max: 0.5 },
    '17 mm',
    'Length of the hollow in the valve along the travel.',
    'Callipers in the hollow of the valve.',
  ),
  rim_width: quantity(
    'length',
    { min: 2e-4, max: 0.1 },
    '3 mm',
    'Least width of face that seals the hollow at both sides and at the far end.',
    'Callipers on the face of the valve, at its narrowest.',
  ),
  face_gap: quantity(
    'length',
    { min: 0, max: 1e-3 },
    '5 um',
    'Height of the gap left between valve and port face with the air pressing on; zero for a perfect fit.',
    'Lay the valve on a surface plate with a smear of marking blue; a face that marks all over is ' +
      'within some 5 µm (common practice, no source). A wheel of feelers finds 40 µm and more. Or time ' +
      'the gauge.',
  ),
  friction_coefficient: pureNumber(
    { min: 0, max: 1, default: 0 },
    '0.12',
    'Of the valve on its face, pressed there by the air; oiled metal 0.1–0.2. Zero leaves the rubbing force alone.',
    measuring.faceFriction,
  ),
  making: slideValveMaking,
};

export type FlatSlideValve = Values<typeof flatSlideValveParameters>;

/** The hollow must still uncover as much of the exhaust port as of the cylinder port. */
function cavityComplaints(own: FlatSlideValve): Complaint[] {
  const uncovered = own.travel / 2 - own.exhaust_lap;
  const shortest = own.bar_width + uncovered + Math.min(own.port_width, uncovered);
  if (own.cavity_length >= shortest) return [];
  return [
    {
      path: ['cavity_length'],
      expected: `at least ${mm(shortest)}, or the hollow leaves the exhaust port too far at the end of the travel`,
      received: mm(own.cavity_length),
    },
  ];
}

function complaints(own: FlatSlideValve): readonly Complaint[] {
  const ofValve = slideValveComplaints(slideValveOf(own));
  return ofValve.length > 0 ? ofValve : cavityComplaints(own);
}

function sealingGaps(own: FlatSlideValve, { gas }: PartContext): Passage[] {
  const { face_gap: h, port_length, port_width, cavity_length } = own;
  if (h === 0) return [];
  const valve = slideValveOf(own);
  const rimWidth = Math.max(h, own.rim_width);
  const portEnds = (2 * port_width) / rimWidth;
  const rim = 2 * cavity_length + port_length;
  return [
    gap(
      gas,
      { name: 'past the steam lap', from: 'chest', to: 'cylinder' },
      overTravel(
        valve,
        (s) => filmResistance(port_length / steamLand(valve, s, h) + portEnds, h),
        steamLandBends(valve, h),
      ),
      (port_length + 2 * port_width) * h,
    ),
    gap(
      gas,
      { name: 'past the exhaust lap', from: 'cylinder', to: 'atmosphere' },
      overTravel(
        valve,
        (s) => filmResistance(port_length / exhaustLand(valve, s, h), h),
        exhaustLandBends(valve, h),
      ),
      port_length * h,
    ),
    gap(
      gas,
      { name: 'under the rim of the valve', from: 'chest', to: 'atmosphere' },
      filmResistance(rim / rimWidth, h),
      rim * h,
    ),
  ];
}

function build(own: FlatSlideValve, context: PartContext): ValveGear {
  const pressed = pressingForce(
    {
      valve: slideValveOf(own),
      portLength: own.port_length,
      cavityLength: own.cavity_length,
      rimWidth: own.rim_width,
    },
    context,
  );
  return slideValveGear(
    {
      valve: slideValveOf(own),
      portLength: own.port_length,
      dischargeCoefficient: own.discharge_coefficient,
      rubbingForce: (displacement, pressures) =>
        own.rubbing_force + own.friction_coefficient * pressed(displacement, pressures),
      slips: own.eccentric === 'slip',
      gapHeight: own.face_gap,
      sealingGaps: sealingGaps(own, context),
    },
    context,
  );
}

export const flatSlideValve = kindOf({
  kind: 'flat slide valve',
  doc: 'A hollow block on a flat port face in the chest, moved by an eccentric.',
  parameters: flatSlideValveParameters,
  complaints,
  build,
});
