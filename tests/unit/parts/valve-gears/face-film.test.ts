/** Three holes that share one film, against a numerical solution of Laplace's equation on the whole face. */
import { describe, expect, it } from 'vitest';
import { faceFilm } from '../../../../src/parts/valve-gears/face-film.ts';
import { circle, openPlane, shapeFactors, type Edge } from '../../../support/field-solution.ts';

interface Face {
  readonly name: string;
  readonly rim: number;
  readonly pivot: number;
  /** Radius of the circle the holes stand on. */
  readonly at: number;
  readonly chest: number;
  readonly cylinder: number;
  readonly room: number;
  /** Where the holes stand [rad]. */
  readonly chestAngle: number;
  readonly cylinderAngle: number;
  readonly roomAngle: number;
}

const usual = {
  rim: 50,
  pivot: 4,
  at: 32,
  chest: 3,
  cylinder: 3,
  room: 3,
  chestAngle: 0.23,
  roomAngle: -0.23,
};
const faces: readonly Face[] = [
  { ...usual, name: 'port in the middle', cylinderAngle: 0 },
  { ...usual, name: 'port on its way to the exhaust hole', cylinderAngle: -0.02 },
  { ...usual, name: 'wide apart', chestAngle: 0.5, roomAngle: -0.5, cylinderAngle: 0.1 },
  {
    ...usual,
    name: 'wide apart, a land of half a millimetre',
    chestAngle: 0.4,
    roomAngle: -0.4,
    cylinderAngle: 0.196,
  },
  {
    ...usual,
    name: 'unequal holes',
    chest: 2,
    room: 4,
    chestAngle: 0.3,
    roomAngle: -0.4,
    cylinderAngle: 0.1,
  },
  {
    name: 'a small engine',
    rim: 12,
    pivot: 1.5,
    at: 8,
    chest: 1,
    cylinder: 1,
    room: 1.25,
    chestAngle: 0.25,
    cylinderAngle: -0.02,
    roomAngle: -0.33,
  },
];

const place = (radius: number, angle: number): [number, number] => [
  radius * Math.cos(angle),
  radius * Math.sin(angle),
];

const hole = (at: [number, number], radius: number, potential: number): Edge => ({
  curve: circle(...at, radius),
  behind: circle(...at, 0.75 * radius),
  potential,
});

/** S out of chest hole and port, with one of them at unit potential. */
function fluxes(face: Face, chest: number, cylinder: number): readonly number[] {
  return shapeFactors(
    [
      hole(place(face.at, face.chestAngle), face.chest, chest),
      hole(place(face.at, face.cylinderAngle), face.cylinder, cylinder),
      hole(place(face.at, face.roomAngle), face.room, 0),
      hole([0, 0], face.pivot, 0),
      { curve: circle(0, 0, face.rim), behind: circle(0, 0, 1.3 * face.rim), potential: 0 },
    ],
    openPlane,
  );
}

const apart = (face: Face, a: number, b: number): number => 2 * face.at * Math.sin(Math.abs(a - b) / 2);

describe('three holes in one film', () => {
  it.each(faces)('$name', (face) => {
    const film = faceFilm(
      { holeCircle: face.at, rim: face.rim, pivot: face.pivot },
      {
        chest: face.chest,
        cylinder: face.cylinder,
        room: face.room,
        chestToRoom: apart(face, face.chestAngle, face.roomAngle),
      },
    );
    const found = film({
      chestToCylinder: apart(face, face.chestAngle, face.cylinderAngle),
      cylinderToRoom: apart(face, face.cylinderAngle, face.roomAngle),
    });
    const [ofChest, intoPort] = fluxes(face, 1, 0) as [number, number];
    const [, ofCylinder] = fluxes(face, 0, 1) as [number, number];
    const field = {
      chestToCylinder: -intoPort,
      chestToRoom: ofChest + intoPort,
      cylinderToRoom: ofCylinder + intoPort,
    };
    // The chest's own leak to the room is the least when the port lies between; there it comes out too small.
    const tolerance = { chestToCylinder: 0.1, cylinderToRoom: 0.1, chestToRoom: 0.25 };
    for (const which of ['chestToCylinder', 'cylinderToRoom', 'chestToRoom'] as const)
      expect(Math.abs(found[which] / field[which] - 1), which).toBeLessThan(tolerance[which]);
  });
});
