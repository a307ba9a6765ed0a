/** Port face, valve and eccentric of a flat slide valve. */
import type { Mark, PartDrawing } from '../drawing/drawing.ts';
import { holeSize } from '../drawing/fits.ts';
import { cross, dimension, leader, line, turningArrow, words } from '../drawing/marks.ts';
import { WALL } from '../drawing/metal.ts';
import { degrees, inMm, mm } from '../drawing/words.ts';
import type { Outline } from '../geometry/outline.ts';
import { moved, polar } from '../geometry/placing.ts';
import { circle, roundedRectangle } from '../geometry/shapes.ts';
import type { SlidePlan } from './slide-plan.ts';

const ORIGIN = { x: 0, y: 0 };
const UP = Math.PI / 2;

/** A rectangle from one place along the travel to another, about the middle line. */
const between = (from: number, to: number, width: number): Outline =>
  moved(roundedRectangle(to - from, width, 0), (from + to) / 2, 0);

/** Ports as they lie along the travel, by name. */
function ports({ own, twoPorts, exhaustWidth }: SlidePlan): readonly (readonly [string, number, number])[] {
  const { port_width: port, bar_width: bar } = own;
  const far = -2 * bar - exhaustWidth;
  return [
    ['cylinder', 0, port],
    ['exhaust', -bar - exhaustWidth, -bar],
    ...(twoPorts ? [['crank end', far - port, far] as const] : []),
  ];
}

export function portFace(plan: SlidePlan): PartDrawing {
  const { own, valveWidth, faceFrom, faceTo, exhaustWidth } = plan;
  const half = own.port_length / 2;
  const length = faceTo - faceFrom;
  const along = (from: number, to: number, depth: number, text: string): Mark[] =>
    dimension({ x: from, y: -half }, { x: to, y: -half }, 0, -depth, text);
  return {
    id: 'port-face',
    name: 'Port face',
    quantity: 1,
    stock: `cast iron or bronze plate ${inMm(own.making.face_thickness)}`,
    thickness: own.making.face_thickness,
    edge: between(faceFrom, faceTo, valveWidth + 2 * WALL),
    openings: ports(plan).map(([, from, to]) => between(from, to, own.port_length)),
    holes: [],
    marks: [
      line('centre', { x: faceFrom - 4e-3, y: 0 }, { x: faceTo + 4e-3, y: 0 }),
      { type: 'outline', layer: 'reference', outline: between(plan.valveFrom, plan.valveTo, valveWidth) },
      ...along(0, own.port_width, valveWidth / 2 + 8e-3, mm(own.port_width)),
      ...along(-own.bar_width - exhaustWidth, -own.bar_width, valveWidth / 2 + 8e-3, mm(exhaustWidth)),
      ...along(-own.bar_width, 0, valveWidth / 2 + 15e-3, `${mm(own.bar_width)} ±0.02`),
      ...along(faceFrom, faceTo, valveWidth / 2 + 22e-3, mm(length)),
      ...dimension({ x: faceTo, y: -half }, { x: faceTo, y: half }, UP, -9e-3, mm(own.port_length)),
      ...dimension(
        { x: faceFrom, y: -valveWidth / 2 - WALL },
        { x: faceFrom, y: valveWidth / 2 + WALL },
        UP,
        9e-3,
        mm(valveWidth + 2 * WALL),
      ),
    ],
    notes: [
      'Seen on the face that the valve slides on. The cover end of the cylinder is on the right; the valve in its middle position lies in thin dashes.',
      'Corners of the ports may be left round by the cutter; the edges across the travel must be straight and sharp, they are the valve.',
      'Screws that hold the face stay outside the dashes and their travel.',
      'Scrape or lap the face flat on plate glass after drilling.',
    ],
    facts: [
      ...ports(plan).map(
        ([name, from, to]) =>
          [
            `${name} port`,
            `${mm(to - from)} × ${mm(own.port_length)} mm, ${((to - from) * own.port_length * 1e6).toFixed(1)} mm²`,
          ] as const,
      ),
      ['Bar', inMm(own.bar_width)],
    ],
  };
}

export function slideValveDrawing(plan: SlidePlan): PartDrawing {
  const { own, valveFrom, valveTo, valveWidth, twoPorts } = plan;
  const { making } = own;
  const hollowTo = -own.exhaust_lap;
  const hollowFrom = hollowTo - own.cavity_length;
  const top = valveWidth / 2 + 14e-3;
  const roof = Math.min(3e-3, making.valve_height / 3);
  const below = (from: number, to: number, depth: number, text: string): Mark[] =>
    dimension({ x: from, y: -valveWidth / 2 }, { x: to, y: -valveWidth / 2 }, 0, -depth, text);
  const land = own.port_width + own.steam_lap + own.exhaust_lap;
  return {
    id: 'slide-valve',
    name: 'Slide valve',
    quantity: 1,
    stock: `bronze or brass, ${mm(valveTo - valveFrom)} × ${mm(valveWidth)} × ${mm(making.valve_height)} mm`,
    openings: [],
    holes: [],
    marks: [
      { type: 'outline', layer: 'outline', outline: between(valveFrom, valveTo, valveWidth) },
      { type: 'outline', layer: 'outline', outline: between(hollowFrom, hollowTo, own.port_length) },
      line('centre', { x: valveFrom - 4e-3, y: 0 }, { x: valveTo + 4e-3, y: 0 }),
      ...below(hollowTo, valveTo, 8e-3, `${mm(land, 3)} ±0.02`),
      ...below(hollowFrom, hollowTo, 15e-3, `${mm(own.cavity_length)} ±0.02`),
      ...below(valveFrom, valveTo, 22e-3, mm(valveTo - valveFrom)),
      ...dimension(
        { x: valveFrom, y: -valveWidth / 2 },
        { x: valveFrom, y: valveWidth / 2 },
        UP,
        9e-3,
        mm(valveWidth),
      ),
      ...dimension(
        { x: valveTo, y: -own.port_length / 2 },
        { x: valveTo, y: own.port_length / 2 },
        UP,
        -9e-3,
        mm(own.port_length),
      ),
      // Cut lengthwise above, the face downwards.
      {
        type: 'outline',
        layer: 'outline',
        outline: moved(between(valveFrom, valveTo, making.valve_height), 0, top + making.valve_height / 2),
      },
      line('outline', { x: hollowFrom, y: top }, { x: hollowFrom, y: top + making.valve_height - roof }),
      line('outline', { x: hollowTo, y: top }, { x: hollowTo, y: top + making.valve_height - roof }),
      line(
        'outline',
        { x: hollowFrom, y: top + making.valve_height - roof },
        { x: hollowTo, y: top + making.valve_height - roof },
      ),
      ...dimension(
        { x: valveFrom, y: top },
        { x: valveFrom, y: top + making.valve_height },
        UP,
        9e-3,
        mm(making.valve_height),
      ),
    ],
    notes: [
      'Seen on its face; cut lengthwise above. The cover end is on the right.',
      'Mill the hollow first, then face both ends to the lands. The four edges across the travel must be square and sharp.',
      'The valve must be free to lift: drive it by a buckle or a nut with play across the face, none along the travel.',
    ],
    facts: [
      [
        twoPorts ? 'Land at either end' : 'Land',
        `${inMm(land, 3)} = port ${inMm(own.port_width)} + steam lap ${inMm(own.steam_lap)} + exhaust lap ${inMm(own.exhaust_lap)}`,
      ],
      ['Travel', `${inMm(own.travel)}, from an eccentric of ${inMm(own.travel / 2, 3)}`],
    ],
  };
}

/** The eccentric as the crank stands at top dead centre, the line of the crank up. */
export function eccentric(plan: SlidePlan): PartDrawing {
  const { making, travel } = plan.own;
  const throwRadius = travel / 2;
  const sense = making.turning === 'clockwise' ? -1 : 1;
  const ahead = UP + plan.advance;
  const direction = UP + sense * ahead;
  const centre = polar(throwRadius, direction);
  const radius = Math.ceil((making.shaft_diameter / 2 + throwRadius + 2 * WALL) * 1e3) / 1e3;
  return {
    id: 'eccentric',
    name: 'Eccentric',
    quantity: 1,
    stock: `steel or cast-iron plate ${inMm(making.eccentric_thickness)}`,
    thickness: making.eccentric_thickness,
    edge: circle(radius, centre),
    openings: [],
    holes: [
      {
        centre: ORIGIN,
        diameter: making.shaft_diameter,
        finish: 'ream',
        purpose: 'shaft, H7, with a set screw in its hub',
      },
    ],
    marks: [
      ...cross(ORIGIN, making.shaft_diameter / 2 + 3e-3),
      ...cross(centre, radius + 3e-3),
      line(
        'engrave',
        polar(making.shaft_diameter / 2 + 1e-3, UP),
        polar(making.shaft_diameter / 2 + 4e-3, UP),
      ),
      words('engrave', { x: 1e-3, y: making.shaft_diameter / 2 + 1.5e-3 }, 'crank', 'start', {
        height: 2e-3,
      }),
      ...leader(centre, radius, sense < 0 ? 0.7 : Math.PI - 0.7, 9e-3, `Ø${mm(2 * radius)} f7`),
      ...leader(
        ORIGIN,
        making.shaft_diameter / 2,
        Math.PI * 1.25,
        radius + 4e-3,
        holeSize(making.shaft_diameter, '7'),
      ),
      ...turningArrow(centre, radius + 6e-3, UP - sense * 0.3, sense * 0.6, 'turns'),
    ],
    notes: [
      `Seen on the side from which the shaft turns ${making.turning}.`,
      `The middle of the eccentric stands ${degrees(ahead)} ahead of the crank: 90° and the angle of advance of ${degrees(plan.advance)}. Set it by the lead, then pin it.`,
      'For a valve that is pushed straight from the eccentric; a rocker between them turns it round.',
    ],
    facts: [
      ['Eccentricity', `${inMm(throwRadius, 3)} ±0.02; half the travel of the valve`],
      ['Ahead of the crank', degrees(ahead)],
    ],
  };
}
