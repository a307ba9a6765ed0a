/** What a rotary disc valve is described by. */
import { count, crankPosition, group, optional, pureNumber, quantity } from '../../kinds/describe.ts';
import type { Values } from '../../kinds/parameter.ts';
import { crankAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import type { DiscTrack } from './disc-track.ts';
import { plates } from './rotary-disc-making.ts';

import { measuring } from '../measuring.ts';

const trackParameters = (opens: string, closes: string) => ({
  pitch_radius: quantity(
    'length',
    { min: 1e-3, max: 0.5 },
    '25 mm',
    'Radius from the shaft centre to the middle of slot and hole.',
    'From the drawing, or callipers: shaft to near edge plus half the shaft and half the hole.',
  ),
  hole_diameter: quantity(
    'length',
    { min: 2e-4, max: 0.1 },
    '6 mm',
    'Diameter of the hole in each plate.',
    measuring.holeDiameter,
  ),
  slot_width: quantity(
    'length',
    { min: 2e-4, max: 0.1 },
    '6 mm',
    'Width of the arc slot; its ends are half round.',
    'The largest drill shank that slides along the slot.',
  ),
  opens: crankPosition(opens, 'Where the slot begins to uncover the hole.', measuring.opens),
  closes: crankPosition(closes, 'Where the slot has just left the hole.', measuring.closes),
});

export const rotaryDiscParameters = {
  disc_diameter: quantity(
    'length',
    { min: 5e-3, max: 1 },
    '80 mm',
    'Outer diameter of the disc.',
    'Callipers across the disc.',
  ),
  shaft_diameter: quantity(
    'length',
    { min: 1e-3, max: 0.5 },
    '10 mm',
    'Diameter of the shaft through the disc.',
    'Callipers on the shaft where it passes the disc.',
  ),
  slots: count(
    { min: 1, max: 6, default: 1 },
    'How many equal slots each track has; the disc is geared down to turn once in so many turns of the crank.',
    'Count them, and count the turns of the crank for one of the disc.',
  ),
  face_gap: quantity(
    'length',
    { min: 1e-6, max: 1e-3 },
    '30 um',
    'Gap between the disc and either plate.',
    'Half of: spacer thickness less disc thickness, both by micrometer. It is the gap at each face. ' +
      'Feelers find it too, down to 40 µm or so.',
  ),
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.7 },
    '0.7',
    'Of each face; sharp edges 0.6–0.8.',
    measuring.dischargeCoefficient,
  ),
  body_advance: quantity(
    'angle',
    { min: -Math.PI, max: Math.PI, default: 0 },
    '5 deg',
    'Turning the plates against the disc: all events come earlier by this angle of the disc.',
    'Scribe a line across plate and body at zero and read the angle it has moved.',
  ),
  reverse_turn: optional(
    quantity(
      'angle',
      { min: -Math.PI, max: Math.PI },
      '80 deg',
      'For an engine that is reversed by turning the plates to a second stop: how far they are turned, against the forward direction. In reverse all events then come later by this angle of the disc than the timing passed backwards has them.',
      'Degree disc on the plates: the angle between the two stops.',
    ),
  ),
  film_viscosity: quantity(
    'dynamic viscosity',
    { min: 0, max: 10, default: 0 },
    '50 mPa s',
    'Viscosity of the oil or grease that wets the faces; zero when they run dry.',
    'From the label: an oil of ISO VG 32 has 28 mPa s at 40 °C and some 80 at 20 °C (from the grade and ' +
      'a density of 0.87 g/cm³; the cold value from memory).',
  ),
  preload_torque: quantity(
    'torque',
    { min: 0, max: 100, default: 0 },
    '0.05 N m',
    'Torque at the crankshaft to turn the dry, pressed-together stack.',
    'A cord round the disc, or a spring balance on a lever: the torque that keeps the stack turning, ' +
      'divided by the slots.',
  ),
  friction_coefficient: pureNumber(
    { min: 0, max: 1, default: 0 },
    '0.12',
    'Of the disc on the plate to which the air pushes it; oiled metal 0.1–0.2. Zero leaves film and preload alone.',
    measuring.faceFriction,
  ),
  admission: group('The track that lets air into the cylinder.', trackParameters('-5 deg', '50 % of stroke')),
  exhaust: group('The track that lets air out.', trackParameters('170 deg', '90 % of return stroke')),
  plates,
};

export type RotaryDisc = Values<typeof rotaryDiscParameters>;

export function discTrack(disc: RotaryDisc, which: 'admission' | 'exhaust', context: PartContext): DiscTrack {
  const track = disc[which];
  const advance = disc.slots * disc.body_advance;
  return {
    pitchRadius: track.pitch_radius,
    holeDiameter: track.hole_diameter,
    slotWidth: track.slot_width,
    slots: disc.slots,
    opens: crankAngle(context.crank, track.opens) - advance,
    closes: crankAngle(context.crank, track.closes) - advance,
  };
}
