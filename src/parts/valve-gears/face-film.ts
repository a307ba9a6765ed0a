/**
 * The film between two flat faces that turn on one another about a pivot, with three holes on one circle: one under the
 * pressure of the chest, one under that of the cylinder, one open to the room, as are rim and pivot.
 *
 * All draw on the same film, so they cannot be reckoned two by two and added. The logarithm maps the ring between pivot
 * and rim to a strip W = ln(R_rim/R_pivot) wide, with the holes of radius ρ = a/R at u = ln(R/R_pivot) from its edge.
 * A unit source in hole j raises p² in hole i by P_ij/2π (line sources between two lines at zero, any field text):
 *
 *   P_ii = ln((2W/πρ_i) sin(πu/W)),   P_ij = ½ ln(1 + sin²(πu/W)/sinh²(πψ/2W)),  ψ the angle between them
 *
 * The inverse of P gives the shape factors. Holes near to each other do not act from their centres; each pair is
 * corrected by what it is wrong by when alone: ln(L²/(ab)) against arcosh((L² − a² − b²)/(2ab)), L centre to centre.
 * Derived. Against a field solution (tests): within 10 % to and from the cylinder, 25 % for the small rest from chest to
 * room.
 */
import { acosh, sinh } from '../../numerics/elementary/hyperbolic.ts';
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import { log } from '../../numerics/elementary/logarithm.ts';
import { sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';

export interface FaceRing {
  /** Radius of the circle that the holes stand on, and of rim and pivot [m]. */
  readonly holeCircle: number;
  readonly rim: number;
  readonly pivot: number;
}

/** Radii of the holes [m], and between those that stand still the distance of their centres. */
export interface FilmHoles {
  readonly chest: number;
  readonly cylinder: number;
  readonly room: number;
  readonly chestToRoom: number;
}

/** Distances of the hole that goes with the cylinder from the others, centre to centre [m]. */
export interface FilmDistances {
  readonly chestToCylinder: number;
  readonly cylinderToRoom: number;
}

/** Shape factors S of the three leaks through one film. */
export interface FilmShapeFactors {
  readonly chestToCylinder: number;
  readonly cylinderToRoom: number;
  readonly chestToRoom: number;
}

interface Strip {
  readonly width: number;
  readonly sine: number;
}

function stripOf({ holeCircle, rim, pivot }: FaceRing): Strip {
  const width = log(rim / pivot);
  return { width, sine: sin((Math.PI * log(holeCircle / pivot)) / width) };
}

function ownTerm({ width, sine }: Strip, { holeCircle }: FaceRing, radius: number): number {
  return log((2 * width * holeCircle * sine) / (Math.PI * radius));
}

function sharedTerm({ width, sine }: Strip, { holeCircle }: FaceRing, apart: number): number {
  const angle = 2 * asin(Math.min(1, apart / (2 * holeCircle)));
  return 0.5 * log(1 + square(sine / sinh((Math.PI * angle) / (2 * width))));
}

/** How much more a pair of circles passes than sources in their centres would. */
function nearness(a: number, b: number, apart: number): number {
  return log(square(apart) / (a * b)) / acosh((square(apart) - square(a) - square(b)) / (2 * a * b));
}

/** What hangs on the angle alone is left to be reckoned for every one; the rest is reckoned here. */
export function faceFilm(ring: FaceRing, holes: FilmHoles): (distances: FilmDistances) => FilmShapeFactors {
  const strip = stripOf(ring);
  const p11 = ownTerm(strip, ring, holes.chest);
  const p22 = ownTerm(strip, ring, holes.cylinder);
  const p33 = ownTerm(strip, ring, holes.room);
  const p13 = sharedTerm(strip, ring, holes.chestToRoom);
  const nearnessToRoom = nearness(holes.chest, holes.room, holes.chestToRoom);
  return ({ chestToCylinder, cylinderToRoom }) => {
    const p12 = sharedTerm(strip, ring, chestToCylinder);
    const p23 = sharedTerm(strip, ring, cylinderToRoom);
    // Cofactors of the symmetric matrix; between two holes the entry of the inverse is minus what passes between them.
    const c11 = p22 * p33 - square(p23);
    const c22 = p11 * p33 - square(p13);
    const s12 = p12 * p33 - p13 * p23;
    const s23 = p11 * p23 - p12 * p13;
    const s13 = p13 * p22 - p12 * p23;
    const perUnit = (2 * Math.PI) / (p11 * c11 - p12 * s12 - p13 * s13);
    // Behind another hole next to nothing is left; rounding, or holes too wide to be sources, must not make it less.
    const factor = (share: number): number => perUnit * Math.max(0, share);
    return {
      chestToCylinder: factor(s12) * nearness(holes.chest, holes.cylinder, chestToCylinder),
      cylinderToRoom: factor(c22 - (s12 + s23) + s23 * nearness(holes.cylinder, holes.room, cylinderToRoom)),
      chestToRoom: factor(c11 - (s12 + s13) + s13 * nearnessToRoom),
    };
  };
}
