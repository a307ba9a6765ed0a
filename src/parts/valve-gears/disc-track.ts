/**
 * One track of a rotary disc valve: n equal arc slots in the disc that pass, one after the other, a round hole in each of
 * two plates. The disc turns once in n turns of the crank, so that each turn of the crank brings one slot.
 *
 * The hole centre moves along the slot with the angle of the disc. Touch: the round end of the slot meets the hole when
 * their centres are (d + w)/2 apart, an angle of α = 2 asin((d + w)/(4 R)) on the pitch circle. So a slot whose end
 * centres are L apart keeps the port open for L + 2α of disc angle, n (L + 2α) of crank angle; here opening and closing
 * are given in crank angle and L follows.
 */
import { areaInSeries } from '../../gas/nozzle.ts';
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { forwardAngle, FULL_TURN } from '../crank-positions.ts';
import { sharedArea, type ArcRegion } from '../geometry/arc-region.ts';
import { slotRegion } from '../geometry/arc-slot.ts';
import type { Opening } from '../passage.ts';
import { CELLS_OF_FILMS, thereAndBack } from '../turn-table.ts';

export interface DiscTrack {
  readonly pitchRadius: number;
  readonly holeDiameter: number;
  readonly slotWidth: number;
  /** n, slots on this pitch circle and crank turns per turn of the disc. */
  readonly slots: number;
  /** Crank angles at which the port starts to open and has just closed [rad]. */
  readonly opens: number;
  readonly closes: number;
}

/** Angle on the pitch circle between two centres a chord apart. */
const chordAngle = (pitchRadius: number, chord: number): number =>
  2 * asin(Math.min(1, chord / (2 * pitchRadius)));

export const touchAngle = (track: DiscTrack): number => chordAngle(track.pitchRadius, touchDistance(track));

export const openDuration = (track: DiscTrack): number => forwardAngle(track.opens, track.closes);

/** How far the disc turns while the port is open [rad]. */
const openDiscAngle = (track: DiscTrack): number => openDuration(track) / track.slots;

/** Angle between the centres of a slot's round ends [rad]; negative when the wanted duration is too short. */
export const slotLength = (track: DiscTrack): number => openDiscAngle(track) - 2 * touchAngle(track);

/** Disc angles after opening at which the overlap bends as the end of the slot passes the hole. */
function openingBends(track: DiscTrack): readonly number[] {
  const touch = touchAngle(track);
  const inside = chordAngle(track.pitchRadius, Math.abs(track.holeDiameter - track.slotWidth) / 2);
  const bends = [0, touch - inside, touch + inside];
  // A hole that is wider than the slot has yet to clear its end.
  return track.holeDiameter > track.slotWidth ? [...bends, 2 * touch] : bends;
}

/** Disc angles after opening at which the shape of the overlap changes. */
export function trackBreakpoints(track: DiscTrack): number[] {
  const fromOpening = [...openingBends(track), 2 * touchAngle(track)];
  const duration = openDiscAngle(track);
  const all = [...fromOpening, ...fromOpening.map((angle) => duration - angle)];
  const ordered = all.filter((angle) => angle >= 0 && angle <= duration).sort((a, b) => a - b);
  return ordered.filter((angle, i) => i === 0 || angle - ordered[i - 1]! > 1e-6);
}

/** Of angles counted from either end of a stretch, those in its first half, and its middle. */
function upToMiddle(fromEitherEnd: readonly number[], stretch: number): readonly number[] {
  const both = fromEitherEnd.flatMap((angle) => [angle, stretch - angle]);
  return [...both.filter((angle) => angle >= 0 && angle < stretch / 2), stretch / 2];
}

/** Overlap of slot and hole [m²] at a disc angle after opening, exactly. */
export function exactOverlap(track: DiscTrack, region: ArcRegion, afterOpening: number): number {
  // A hair off centre and a hair small, so that hole and slot never coincide along an arc, nor touch in mid-slot.
  const along = afterOpening - touchAngle(track) + 1e-10;
  return sharedArea(region, {
    x: track.pitchRadius * cos(along),
    y: track.pitchRadius * sin(along),
    radius: (track.holeDiameter / 2) * (1 - 1e-9),
  });
}

export const trackRegion = (track: DiscTrack): ArcRegion =>
  slotRegion({ pitchRadius: track.pitchRadius, width: track.slotWidth, length: slotLength(track) });

/** Effective area of the port: the overlap at either face, one behind the other. */
export function trackArea(track: DiscTrack, dischargeCoefficient: number): Opening {
  const region = trackRegion(track);
  const bends = openingBends(track);
  const duration = openDiscAngle(track);
  const isSteadyBetween = Math.max(...bends) < duration / 2;
  return thereAndBack(
    (since) => {
      const perFace = dischargeCoefficient * exactOverlap(track, region, since);
      return areaInSeries(perFace, perFace);
    },
    isSteadyBetween ? bends : upToMiddle(bends, duration),
    {
      leaves: track.opens,
      returns: track.opens + openDuration(track),
      perStageThere: track.slots,
      perStageBack: track.slots,
    },
    0,
  );
}

/** What goes by how far the disc has turned since closing and has to turn until opening, alike if the two are exchanged. */
export function whileShut(
  track: DiscTrack,
  smallestLand: number,
  law: (sinceClosing: number, untilOpening: number) => number,
): Opening {
  const shut = FULL_TURN / track.slots - openDiscAngle(track);
  return thereAndBack(
    (since) => law(since, shut - since),
    upToMiddle([0, ...shutBreakpoints(track, smallestLand)], shut),
    {
      leaves: track.opens + openDuration(track),
      returns: track.opens + FULL_TURN,
      perStageThere: track.slots,
      perStageBack: track.slots,
    },
    law(0, shut),
    CELLS_OF_FILMS,
  );
}

const touchDistance = (track: DiscTrack): number => (track.holeDiameter + track.slotWidth) / 2;

/**
 * Straight distance from the hole's centre to a slot end's centre that is a disc angle short of touching; never less
 * than touching plus the smallest land, so that the leak stays finite as the edges meet.
 */
export function centreDistance(track: DiscTrack, angleToEnd: number, smallestLand: number): number {
  const chord = 2 * track.pitchRadius * sin(Math.min(Math.PI, angleToEnd + touchAngle(track)) / 2);
  return Math.max(chord, touchDistance(track) + smallestLand);
}

/** Disc angles after closing, and before opening, at which that distance begins and ceases to grow. */
export function shutBreakpoints(track: DiscTrack, smallestLand: number): number[] {
  const touch = touchAngle(track);
  const begins = chordAngle(track.pitchRadius, touchDistance(track) + smallestLand) - touch;
  const shut = (FULL_TURN - openDuration(track)) / track.slots;
  return [begins, Math.PI - touch].filter((angle) => angle < shut);
}
