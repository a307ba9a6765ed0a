/** Rotary discs that cannot be made, in words. */
import type { Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import { openDuration, slotLength, touchAngle } from './disc-track.ts';
import { discTrack, type RotaryDisc } from './rotary-disc-parameters.ts';

const mm = (length: number): string => `${(length * 1e3).toFixed(2)} mm`;
const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)} deg`;

type TrackName = 'admission' | 'exhaust';

/** Metal that must be left between slots, holes, rim and shaft: one millimetre, common practice, no source. */
const SMALLEST_WALL = 1e-3;

function radialComplaints(disc: RotaryDisc, name: TrackName): Complaint[] {
  const track = disc[name];
  const reach = Math.max(track.hole_diameter, track.slot_width) / 2;
  const smallest = disc.shaft_diameter / 2 + reach + SMALLEST_WALL;
  const largest = disc.disc_diameter / 2 - reach - SMALLEST_WALL;
  if (track.pitch_radius >= smallest && track.pitch_radius <= largest) return [];
  return [
    {
      path: [name, 'pitch_radius'],
      expected:
        smallest <= largest
          ? `between ${mm(smallest)} and ${mm(largest)}, so that 1 mm is left to shaft and rim`
          : `a disc of at least ${mm(2 * (smallest + reach + SMALLEST_WALL))} diameter for this shaft and slot`,
      received: mm(track.pitch_radius),
    },
  ];
}

function timingComplaints(disc: RotaryDisc, name: TrackName, context: PartContext): Complaint[] {
  const track = discTrack(disc, name, context);
  const shortest = 2 * touchAngle(track);
  const longest = 2 * Math.PI - shortest;
  const duration = openDuration(track);
  if (duration >= shortest && slotLength(track) <= longest) return [];
  return [
    {
      path: [name, 'closes'],
      expected: `open for ${degrees(shortest)} to ${degrees(longest + shortest)} of the turn with these holes and slots`,
      received: degrees(duration),
      hint: 'Smaller holes, or a larger pitch radius, allow a shorter opening.',
    },
  ];
}

/** Two slots on one disc: apart in radius, or each would also pass the other's hole. */
function overlapComplaints(disc: RotaryDisc): Complaint[] {
  const reach = (name: TrackName): number => Math.max(disc[name].hole_diameter, disc[name].slot_width) / 2;
  const needed = reach('admission') + reach('exhaust') + SMALLEST_WALL;
  const apart = Math.abs(disc.admission.pitch_radius - disc.exhaust.pitch_radius);
  if (apart >= needed) return [];
  return [
    {
      path: ['exhaust', 'pitch_radius'],
      expected: `at least ${mm(needed)} away from the admission pitch radius, so that neither slot passes the other hole`,
      received: `${mm(apart)} away`,
    },
  ];
}

export function rotaryDiscComplaints(disc: RotaryDisc, context: PartContext): readonly Complaint[] {
  return [
    ...radialComplaints(disc, 'admission'),
    ...radialComplaints(disc, 'exhaust'),
    ...timingComplaints(disc, 'admission', context),
    ...timingComplaints(disc, 'exhaust', context),
    ...overlapComplaints(disc),
  ];
}
