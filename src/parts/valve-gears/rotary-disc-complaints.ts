/** Rotary discs that cannot be made, in words. */
import type { Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import { openDuration, touchAngle, type DiscTrack } from './disc-track.ts';
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
  const shortest = 2 * touchAngle(track) * track.slots;
  if (shortest >= 2 * Math.PI) return slotComplaints(disc, name, track);
  const duration = openDuration(track);
  if (duration >= shortest) return [];
  return [
    {
      path: [name, 'closes'],
      expected: `open for at least ${degrees(shortest)} of the crank's turn with these holes and slots`,
      received: degrees(duration),
      hint: 'Smaller holes, a larger pitch radius or fewer slots allow a shorter opening.',
    },
  ];
}

/** A hole that is never without a slot. One slot that large does not fit on the disc, which is another complaint. */
function slotComplaints(disc: RotaryDisc, name: TrackName, track: DiscTrack): Complaint[] {
  const most = Math.ceil(Math.PI / touchAngle(track)) - 1;
  if (most < 1) return [];
  return [
    {
      path: ['slots'],
      expected: `at most ${most} with the ${name} track's holes and slots, or the port never shuts`,
      received: `${disc.slots}`,
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
