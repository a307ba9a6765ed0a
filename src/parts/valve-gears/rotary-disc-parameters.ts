/** What a rotary disc valve is described by. */
import { count, crankPosition, group, pureNumber, quantity } from '../../kinds/describe.ts';
import type { Values } from '../../kinds/parameter.ts';
import { crankAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import type { DiscTrack } from './disc-track.ts';
import { plates } from './rotary-disc-making.ts';

const trackParameters = (opens: string, closes: string) => ({
  pitch_radius: quantity(
    'length',
    { min: 1e-3, max: 0.5 },
    '25 mm',
    'Radius from the shaft centre to the middle of slot and hole.',
  ),
  hole_diameter: quantity('length', { min: 2e-4, max: 0.1 }, '6 mm', 'Diameter of the hole in each plate.'),
  slot_width: quantity(
    'length',
    { min: 2e-4, max: 0.1 },
    '6 mm',
    'Width of the arc slot; its ends are half round.',
  ),
  opens: crankPosition(opens, 'Where the slot begins to uncover the hole.'),
  closes: crankPosition(closes, 'Where the slot has just left the hole.'),
});

export const rotaryDiscParameters = {
  disc_diameter: quantity('length', { min: 5e-3, max: 1 }, '80 mm', 'Outer diameter of the disc.'),
  shaft_diameter: quantity(
    'length',
    { min: 1e-3, max: 0.5 },
    '10 mm',
    'Diameter of the shaft through the disc.',
  ),
  slots: count(
    { min: 1, max: 6, default: 1 },
    'How many equal slots each track has; the disc is geared down to turn once in so many turns of the crank.',
  ),
  face_gap: quantity('length', { min: 1e-6, max: 1e-3 }, '30 um', 'Gap between the disc and either plate.'),
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.7 },
    '0.7',
    'Of each face; sharp edges 0.6–0.8.',
  ),
  body_advance: quantity(
    'angle',
    { min: -Math.PI, max: Math.PI, default: 0 },
    '5 deg',
    'Turning the plates against the disc: all events come earlier by this angle of the disc.',
  ),
  film_viscosity: quantity(
    'dynamic viscosity',
    { min: 0, max: 10, default: 0 },
    '50 mPa s',
    'Viscosity of the oil or grease that wets the faces; zero when they run dry.',
  ),
  preload_torque: quantity(
    'torque',
    { min: 0, max: 100, default: 0 },
    '0.05 N m',
    'Torque at the crankshaft to turn the dry, pressed-together stack.',
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
