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
import { turnTable, type TurnTable } from '../turn-table.ts';

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

/** Disc angles after opening at which the shape of the overlap changes. */
export function trackBreakpoints(track: DiscTrack): number[] {
  const touch = touchAngle(track);
  const inside = chordAngle(track.pitchRadius, Math.abs(track.holeDiameter - track.slotWidth) / 2);
  const duration = openDiscAngle(track);
  const fromOpening = [0, touch - inside, touch + inside, 2 * touch];
  const all = [...fromOpening, ...fromOpening.map((angle) => duration - angle)];
  const ordered = all.filter((angle) => angle >= 0 && angle <= duration).sort((a, b) => a - b);
  return ordered.filter((angle, i) => i === 0 || angle - ordered[i - 1]! > 1e-6);
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
export function trackArea(track: DiscTrack, dischargeCoefficient: number): TurnTable {
  const region = trackRegion(track);
  return turnTable(
    (since) => {
      const perFace = dischargeCoefficient * exactOverlap(track, region, since / track.slots);
      return areaInSeries(perFace, perFace);
    },
    track.opens,
    trackBreakpoints(track).map((discAngle) => track.slots * discAngle),
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
