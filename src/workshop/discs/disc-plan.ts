/**
 * Where everything lies in the stack of a disc valve, seen on the front plate with the crank at top dead centre.
 *
 * A hole that sits at the angle α in the plates is met by a slot whose round ends' centres lie, in the disc, at
 *
 *   begin = α + opens/n + touch,   end = begin + length        for a disc that turns clockwise; mirrored otherwise
 *
 * with n slots on the track and the touch angle of disc-track.ts. The disc is cut for the stack in its middle position;
 * `body_advance` turns the plates against it.
 */
import type { Complaint } from '../../kinds/kind.ts';
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import type { PartContext } from '../../parts/part-context.ts';
import { FULL_TURN } from '../../parts/crank-positions.ts';
import { slotLength, touchAngle } from '../../parts/valve-gears/disc-track.ts';
import { discTrack, type RotaryDisc } from '../../parts/valve-gears/rotary-disc-parameters.ts';
import { clearanceHole, headDiameter, WALL } from '../drawing/metal.ts';
import { inMm } from '../drawing/words.ts';

export type TrackName = 'admission' | 'exhaust';

const trackNames: readonly TrackName[] = ['admission', 'exhaust'];

export interface PlannedTrack {
  readonly name: TrackName;
  readonly pitchRadius: number;
  readonly holeDiameter: number;
  readonly slotWidth: number;
  /** Direction of the hole in the plates [rad]. */
  readonly holeAt: number;
  /** Clockwise ends of the slots in the disc [rad], and the angle from end to end. */
  readonly slotsFrom: readonly number[];
  readonly length: number;
}

export interface DiscPlan {
  readonly disc: RotaryDisc;
  /** +1 when the disc turns clockwise as drawn, and crank angles run anticlockwise round it. */
  readonly sense: number;
  readonly tracks: readonly PlannedTrack[];
  readonly boltCircle: number;
  readonly boltHole: number;
  readonly plateRadius: number;
  /** Of the timing slots in the back plate, and its outer radius. */
  readonly timingCircle: number;
  readonly backRadius: number;
  readonly spacerThickness: number;
  readonly spacerRadius: number;
  /** Directions of bolts and dowels [rad]. */
  readonly bolts: readonly number[];
  readonly dowels: readonly number[];
  readonly timingSlots: readonly number[];
}

const UP = Math.PI / 2;
const TIMING_SLOTS = 3;

/** Air between the rim of the disc and the spacers [m]. */
const RIM_AIR = 1.5e-3;

/** Metal of a spacer round its bolt [m]; common practice, no source. */
const SPACER_WALL = 2.5e-3;

function plannedTrack(disc: RotaryDisc, name: TrackName, sense: number, context: PartContext): PlannedTrack {
  const track = discTrack({ ...disc, body_advance: 0 }, name, context);
  const length = slotLength(track);
  const holeAt = name === 'admission' ? disc.plates.admission_hole_at : disc.plates.exhaust_hole_at;
  const ahead = track.opens / disc.slots + touchAngle(track);
  const from = sense > 0 ? holeAt + ahead : holeAt - ahead - length;
  return {
    name,
    pitchRadius: track.pitchRadius,
    holeDiameter: track.holeDiameter,
    slotWidth: track.slotWidth,
    holeAt,
    slotsFrom: Array.from({ length: disc.slots }, (_, i) => from + (FULL_TURN * i) / disc.slots),
    length,
  };
}

/** Evenly round the circle, none straight up, where the marks are. */
const spread = (count: number, share: number): number[] =>
  Array.from({ length: count }, (_, i) => UP + (FULL_TURN * (i + share)) / count);

export function planDisc(disc: RotaryDisc, context: PartContext): DiscPlan {
  const { plates } = disc;
  const sense = plates.turning === 'clockwise' ? 1 : -1;
  const boltHole = clearanceHole(plates.bolt_diameter);
  const spacerRadius = boltHole / 2 + SPACER_WALL;
  const boltCircle = disc.disc_diameter / 2 + RIM_AIR + spacerRadius;
  const reach = Math.max(spacerRadius, headDiameter(plates.bolt_diameter) / 2);
  const least = boltCircle + reach + 1e-3;
  const plateRadius =
    plates.plate_diameter === undefined ? Math.ceil(least * 1e3) / 1e3 : plates.plate_diameter / 2;
  const timingCircle = plateRadius + headDiameter(plates.bolt_diameter) / 2 + 1e-3;
  const bolts = spread(plates.bolts, 0.5);
  const [gap1 = 0, , gap3 = 0] = spread(plates.bolts, 1);
  return {
    disc,
    sense,
    tracks: trackNames.map((name) => plannedTrack(disc, name, sense, context)),
    boltCircle,
    boltHole,
    plateRadius,
    timingCircle,
    backRadius: timingCircle + boltHole / 2 + WALL,
    spacerThickness: plates.disc_thickness + 2 * disc.face_gap,
    spacerRadius,
    bolts,
    dowels: [gap1, gap3],
    timingSlots: spread(TIMING_SLOTS, 0.5),
  };
}

/** Dowels stand half-way between bolts, clear of their spacers by half a millimetre. */
function mostBolts({ disc, boltCircle, spacerRadius }: DiscPlan): number {
  const apart = spacerRadius + disc.plates.dowel_diameter / 2 + 0.5e-3;
  return Math.floor(Math.PI / (2 * asin(Math.min(1, apart / (2 * boltCircle)))));
}

export function discPlanComplaints(plan: DiscPlan): Complaint[] {
  const { disc, boltCircle, plateRadius } = plan;
  const { plates } = disc;
  const found: Complaint[] = [];
  const least = boltCircle + Math.max(plan.spacerRadius, headDiameter(plates.bolt_diameter) / 2) + 1e-3;
  if (plateRadius < least - 1e-9)
    found.push({
      path: ['plates', 'plate_diameter'],
      expected: `at least ${inMm(2e-3 * Math.ceil(least * 1e3))}, so that the bolts pass outside the disc`,
      received: inMm(2 * plateRadius),
    });
  if (plates.key_width > 0 && plates.key_width >= 0.6 * disc.shaft_diameter)
    found.push({
      path: ['plates', 'key_width'],
      expected: `less than six tenths of the shaft, ${inMm(0.6 * disc.shaft_diameter)}, or zero for a round hole`,
      received: inMm(plates.key_width),
    });
  const most = mostBolts(plan);
  if (plates.bolts > most)
    found.push({
      path: ['plates', 'bolts'],
      expected:
        most >= 3
          ? `at most ${most}, so that spacers and dowels stand clear of each other`
          : 'thinner bolts or dowels: no three of these stand clear of each other round this disc',
      received: String(plates.bolts),
    });
  const innermost = Math.min(...plan.tracks.map((track) => track.pitchRadius - track.slotWidth / 2));
  if (plates.key_width > 0 && disc.shaft_diameter / 2 + plates.key_depth + 1e-3 > innermost)
    found.push({
      path: ['plates', 'key_depth'],
      expected: `at most ${inMm(Math.max(0, innermost - 1e-3 - disc.shaft_diameter / 2))}, so that 1 mm is left to the slots`,
      received: inMm(plates.key_depth),
    });
  return found;
}
