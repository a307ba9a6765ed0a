/**
 * Overlap of a disc valve's slot and hole: against the boolean operations of a general geometry library, against closed
 * forms, and the table the simulator reads against the exact area.
 */
import Flatten from '@flatten-js/core';
import { describe, expect, it } from 'vitest';
import {
  exactOverlap,
  openDuration,
  slotLength,
  touchAngle,
  trackArea,
  trackRegion,
  type DiscTrack,
} from '../../src/parts/valve-gears/disc-track.ts';
import { openingLaw } from '../../src/parts/passage.ts';

const { Arc, BooleanOperations, Circle, Polygon, point } = Flatten;
const TURN = 2 * Math.PI;
const COUNTER_CLOCKWISE = true;

interface Proportions {
  readonly name: string;
  readonly hole: number;
  readonly width: number;
  /** Angle between the centres of the slot's round ends [rad]. */
  readonly length: number;
}

const pitchRadius = 25;

const proportions: readonly Proportions[] = [
  { name: 'hole as wide as the slot', hole: 6, width: 6, length: 1.2 },
  { name: 'hole wider than the slot', hole: 8, width: 5, length: 1.2 },
  { name: 'hole much wider than the slot', hole: 12, width: 3, length: 2 },
  { name: 'hole narrower than the slot', hole: 4, width: 7, length: 1.2 },
  { name: 'slot shorter than the hole', hole: 8, width: 5, length: 0.15 },
  { name: 'slot hardly longer than its ends', hole: 4, width: 7, length: 0.02 },
  { name: 'slot most of the way round', hole: 6, width: 6, length: 5 },
];

/** A track in millimetres that opens at 0. */
function trackOf({ hole, width, length }: Proportions): DiscTrack {
  const track = { pitchRadius, holeDiameter: hole, slotWidth: width, slots: 1, opens: 0, closes: 0 };
  return { ...track, closes: length + 2 * touchAngle(track) };
}

const holeArea = ({ holeDiameter }: DiscTrack): number => (Math.PI / 4) * holeDiameter ** 2;

/** Places over the opening, dense where it begins and ends; never quite where shapes change. */
const places = (track: DiscTrack): number[] =>
  Array.from(
    { length: 40 },
    (_, i) => (openDuration(track) * (1 - Math.cos((Math.PI * (i + 0.37)) / 40))) / 2,
  );

function slotPolygon(track: DiscTrack): Flatten.Polygon {
  const length = slotLength(track);
  const half = track.slotWidth / 2;
  const at = (angle: number): Flatten.Point =>
    point(pitchRadius * Math.cos(angle), pitchRadius * Math.sin(angle));
  return new Polygon([
    new Arc(point(0, 0), pitchRadius + half, 0, length, COUNTER_CLOCKWISE),
    new Arc(at(length), half, length, (length + Math.PI) % TURN, COUNTER_CLOCKWISE),
    new Arc(point(0, 0), pitchRadius - half, length, 0, !COUNTER_CLOCKWISE),
    new Arc(at(0), half, Math.PI, 0, COUNTER_CLOCKWISE),
  ]);
}

function holePolygon(track: DiscTrack, afterOpening: number): Flatten.Polygon {
  const along = afterOpening - touchAngle(track);
  const centre = point(pitchRadius * Math.cos(along), pitchRadius * Math.sin(along));
  return new Polygon(new Circle(centre, track.holeDiameter / 2));
}

describe.each(proportions)('$name', (own) => {
  const track = trackOf(own);
  const region = trackRegion(track);

  it('has the area that a geometry library finds', () => {
    const slot = slotPolygon(track);
    for (const angle of places(track)) {
      const shared = BooleanOperations.intersect(slot, holePolygon(track, angle)).area();
      // The library works to 1e-6 of a length, here millimetres; ours takes a step of 1e-10 rad aside.
      expect(Math.abs(exactOverlap(track, region, angle) - shared)).toBeLessThan(2e-5);
    }
  });

  it('is tabulated to a millionth of the hole', () => {
    const area = openingLaw(trackArea(track, 1));
    for (const angle of places(track)) {
      // Two faces in series.
      const tabulated = area(angle, 0) * Math.SQRT2;
      expect(Math.abs(tabulated - exactOverlap(track, region, angle))).toBeLessThan(1e-6 * holeArea(track));
    }
  });

  it('opens and shuts alike', () => {
    for (const angle of places(track)) {
      const mirrored = exactOverlap(track, region, openDuration(track) - angle);
      expect(Math.abs(exactOverlap(track, region, angle) - mirrored)).toBeLessThan(1e-7);
    }
  });

  it('is shut outside its opening', () => {
    const area = openingLaw(trackArea(track, 1));
    expect(area(0, 0)).toBe(0);
    expect(area(openDuration(track) + 1e-9, 0)).toBe(0);
    expect(area(TURN - 1e-9, 0)).toBe(0);
  });
});

/** Area that two circles share, centres a distance apart (plane geometry). */
function lens(a: number, b: number, distance: number): number {
  if (distance >= a + b) return 0;
  if (distance <= Math.abs(a - b)) return Math.PI * Math.min(a, b) ** 2;
  const alpha = Math.acos((distance ** 2 + a ** 2 - b ** 2) / (2 * distance * a));
  const beta = Math.acos((distance ** 2 + b ** 2 - a ** 2) / (2 * distance * b));
  return a * a * (alpha - Math.sin(2 * alpha) / 2) + b * b * (beta - Math.sin(2 * beta) / 2);
}

describe('closed forms', () => {
  it.each([
    { name: 'equal', hole: 6, width: 6, length: 1.2 },
    { name: 'wider hole', hole: 8, width: 5, length: 1.2 },
    { name: 'narrower hole', hole: 4, width: 7, length: 1.2 },
  ])('$name: a lens of two circles while the hole has not reached the straight of the slot', (own) => {
    const track = trackOf(own);
    const region = trackRegion(track);
    const touch = touchAngle(track);
    for (const share of [0.05, 0.2, 0.35]) {
      const distance = 2 * pitchRadius * Math.sin((touch * (1 - share)) / 2);
      const expected = lens(own.hole / 2, own.width / 2, distance);
      expect(exactOverlap(track, region, touch * share)).toBeCloseTo(expected, 7);
    }
  });

  it('a wider hole in mid-slot: the strip between two circles about the shaft', () => {
    const track = trackOf({ name: '', hole: 8, width: 5, length: 1.2 });
    const within = (radius: number): number => lens(4, radius, pitchRadius);
    const strip = within(pitchRadius + 2.5) - within(pitchRadius - 2.5);
    expect(exactOverlap(track, trackRegion(track), openDuration(track) / 2)).toBeCloseTo(strip, 6);
  });

  it.each([
    { name: 'narrower', hole: 4, width: 7, length: 1.2 },
    { name: 'equally wide', hole: 6, width: 6, length: 1.2 },
    { name: 'equally wide, in a long slot', hole: 6, width: 6, length: 5 },
  ])('$name hole: wholly open from one end of the slot to the other', (own) => {
    const track = trackOf(own);
    const region = trackRegion(track);
    const touch = touchAngle(track);
    const steps = 200;
    for (let i = 1; i < steps; i += 1) {
      const angle = 2 * touch + ((openDuration(track) - 4 * touch) * i) / steps;
      expect(Math.abs(exactOverlap(track, region, angle) / holeArea(track) - 1)).toBeLessThan(1e-6);
    }
  });
});
