/**
 * Oscillating cylinder: the cylinder rocks on a trunnion as the crank pin drives its piston rod, and a hole in its face
 * swings to and fro between a hole that brings air and one that lets it out. Opening of one hole: swing-hole.ts.
 *
 * Leaks: one film of height h between the faces joins chest, cylinder and room; they share it, face-film.ts. The land
 * between port and hole is never counted shorter than the gap is high.
 * Drag: μ N acting at the mean radius of the face, ⅔ (R_o³ − R_i³)/(R_o² − R_i²), through the swing dφ/dθ. N is the
 * spring less what the air in the supply hole and in the port parts the faces with (face-push.ts), never below nothing.
 * In reverse the tap, where one is fitted, makes the exhaust hole the supply and the supply hole the exhaust.
 * Kinematics: oscillating-travel.ts, with the cylinder's rod length as the distance from crank centre to trunnion. The
 * mass of the swinging cylinder is left out.
 */
import { kindOf } from '../../kinds/kind.ts';
import { filmResistance } from '../../gas/gap.ts';
import type { Laws } from '../../numerics/half-segments.ts';
import { sin } from '../../numerics/elementary/trigonometric.ts';
import { cube, square } from '../../numerics/elementary/whole-powers.ts';
import { wrappedAngle } from '../crank-positions.ts';
import { angleOfGreatestSwing, greatestSwing, swing, swingRate } from '../oscillating-travel.ts';
import type { PartContext } from '../part-context.ts';
import { gap, port, type Passage } from '../passage.ts';
import { turnTable, turnTableValue, wholeTurnTables, type TurnTable } from '../turn-table.ts';
import { pushArea } from './face-push.ts';
import { faceFilm } from './face-film.ts';
import { oscillatingCylinderComplaints } from './oscillating-cylinder-complaints.ts';
import {
  oscillatingCylinderParameters,
  oscillatingTrain,
  swingHole,
  type OscillatingCylinder,
} from './oscillating-cylinder-parameters.ts';
import {
  anglesAtDistance,
  centreDistance,
  distanceAtSwing,
  openAndShut,
  openingBreakpoints,
  swingOpening,
  touchDistance,
  type SwingHole,
} from './swing-hole.ts';
import { orderedEdges, type DerivedSize, type GearPressures, type ValveGear } from './valve-gear.ts';

/** The two holes; crank angles of the exhaust hole count backwards. */
interface Holes {
  readonly admission: SwingHole;
  readonly exhaust: SwingHole;
}

/** Of the hole that the port swings over first, and of the other, whose angles count backwards. */
function openingArea(hole: SwingHole, dischargeCoefficient: number, sense: 1 | -1): TurnTable {
  const [opens, shuts] = openAndShut(hole);
  const breakpoints = openingBreakpoints(hole);
  const begins = sense === 1 ? opens : -shuts;
  return turnTable(
    (since) => dischargeCoefficient * swingOpening(hole, sense * (begins + since)),
    begins,
    sense === 1 ? breakpoints : breakpoints.map((since) => shuts - opens - since).reverse(),
  );
}

/** Crank angles at which an opening or a land starts, ends or kinks. */
function holeEdges(hole: SwingHole, gapHeight: number): number[] {
  const [opens] = openAndShut(hole);
  return [
    ...openingBreakpoints(hole).map((since) => opens + since),
    ...anglesAtDistance(hole, touchDistance(hole) + shortestLand(gapHeight)),
  ];
}

/**
 * The film between two holes is never counted shorter than the gap is high, nor than the rounding of a deburred edge [m]
 * (common practice, no source).
 */
const BROKEN_EDGE = 20e-6;
const shortestLand = (gapHeight: number): number => Math.max(gapHeight, BROKEN_EDGE);

/** The film's shape factors by the crank angle, in the order chest to cylinder, cylinder to room, chest to room. */
function filmByAngle(own: OscillatingCylinder, { admission, exhaust }: Holes): Laws {
  const distance = (hole: SwingHole, towards: number): number =>
    Math.max(distanceAtSwing(hole, towards), touchDistance(hole) + shortestLand(own.face_gap));
  const ring = {
    holeCircle: own.hole_circle_radius,
    rim: own.face_diameter / 2,
    pivot: own.pivot_diameter / 2,
  };
  const film = faceFilm(ring, {
    chest: own.admission.hole_diameter / 2,
    cylinder: own.port_diameter / 2,
    room: own.exhaust.hole_diameter / 2,
    chestToRoom: 2 * own.hole_circle_radius * sin((own.admission.angle + own.exhaust.angle) / 2),
  });
  return (angle, factors) => {
    const towardsAdmission = swing(admission.train, angle);
    const found = film({
      chestToCylinder: distance(admission, towardsAdmission),
      cylinderToRoom: distance(exhaust, -towardsAdmission),
    });
    factors[0] = found.chestToCylinder;
    factors[1] = found.cylinderToRoom;
    factors[2] = found.chestToRoom;
  };
}

function sealingGaps(
  own: OscillatingCylinder,
  holes: Holes,
  edges: readonly number[],
  { gas }: PartContext,
): Passage[] {
  const h = own.face_gap;
  if (h === 0) return [];
  const [chestToCylinder, cylinderToRoom, chestToRoom] = wholeTurnTables(3, filmByAngle(own, holes), edges);
  const leak = (ends: Pick<Passage, 'name' | 'from' | 'to'>, factor: TurnTable, mouth: number): Passage => {
    const resistance = (angle: number): number => filmResistance(turnTableValue(factor, angle), h);
    return gap(gas, ends, resistance, Math.PI * mouth * h);
  };
  const supply = own.admission.hole_diameter;
  const cylinder = own.port_diameter;
  return [
    leak(
      { name: 'across the faces, from chest to cylinder', from: 'chest', to: 'cylinder' },
      chestToCylinder!,
      Math.min(supply, cylinder),
    ),
    leak(
      { name: 'across the faces, from cylinder to room', from: 'cylinder', to: 'atmosphere' },
      cylinderToRoom!,
      cylinder,
    ),
    leak(
      { name: 'across the faces, from chest to room', from: 'chest', to: 'atmosphere' },
      chestToRoom!,
      supply,
    ),
  ];
}

function sizes(own: OscillatingCylinder, { admission, exhaust }: Holes): DerivedSize[] {
  const aside = ({ holeCircle, position }: SwingHole): number => holeCircle * sin(position);
  const lap = (hole: SwingHole): number => centreDistance(hole, 0) - touchDistance(hole);
  const { train } = admission;
  const parting = partingAreas(own);
  return [
    { label: 'crank centre to trunnion, as rod_length', value: train.trunnionDistance, dimension: 'length' },
    { label: 'greatest swing either way', value: greatestSwing(train), dimension: 'angle' },
    { label: 'admission hole, aside from the middle line', value: aside(admission), dimension: 'length' },
    { label: 'exhaust hole, aside from the middle line', value: aside(exhaust), dimension: 'length' },
    { label: 'lap of the admission hole at dead centre', value: lap(admission), dimension: 'length' },
    { label: 'lap of the exhaust hole at dead centre', value: lap(exhaust), dimension: 'length' },
    {
      label: 'spring force against which chest and cylinder together part the faces',
      value: parting.supply + parting.port,
      dimension: 'force per pressure',
    },
  ];
}

/** Areas on which the supply hole and the port part the faces [m²]. */
function partingAreas(own: OscillatingCylinder): { readonly supply: number; readonly port: number } {
  const { hole_circle_radius: circle, face_diameter, pivot_diameter } = own;
  const reach = Math.min(face_diameter / 2 - circle, circle - pivot_diameter / 2);
  return {
    supply: pushArea(own.admission.hole_diameter / 2, reach),
    port: pushArea(own.port_diameter / 2, reach),
  };
}

/** Friction torque between the faces about the trunnion [N m]. */
function faceTorque(
  own: OscillatingCylinder,
  { atmosphericPressure: room }: PartContext,
): (pressures: GearPressures) => number {
  const [rim, pivot] = [own.face_diameter / 2, own.pivot_diameter / 2];
  const meanRadius = (2 * (cube(rim) - cube(pivot))) / (3 * (square(rim) - square(pivot)));
  const { supply, port: mouth } = partingAreas(own);
  return ({ chest, cylinder }) => {
    const left = own.face_force - (chest - room) * supply - (cylinder - room) * mouth;
    return own.friction_coefficient * Math.max(0, left) * meanRadius;
  };
}

const withPipesExchanged = (own: OscillatingCylinder): OscillatingCylinder => ({
  ...own,
  admission: own.exhaust,
  exhaust: own.admission,
});

function build(own: OscillatingCylinder, context: PartContext): ValveGear {
  const holes: Holes = {
    admission: swingHole(own, 'admission', context),
    exhaust: swingHole(own, 'exhaust', context),
  };
  const train = oscillatingTrain(context);
  const torque = faceTorque(own, context);
  const { gas } = context;
  const turnsBack = angleOfGreatestSwing(train);
  const edges = orderedEdges([
    ...holeEdges(holes.admission, own.face_gap),
    ...holeEdges(holes.exhaust, own.face_gap).map((angle) => -angle),
    turnsBack,
    -turnsBack,
  ]);
  const intoCylinder = openingArea(holes.admission, own.discharge_coefficient, 1);
  const outOfCylinder = openingArea(holes.exhaust, own.discharge_coefficient, -1);
  const [admission, cutOff] = openAndShut(holes.admission);
  const [backwardOpens, backwardShuts] = openAndShut(holes.exhaust);
  return {
    ports: [
      port(gas, 'admission', { name: 'admission hole', from: 'chest', to: 'cylinder' }, intoCylinder),
      port(gas, 'exhaust', { name: 'exhaust hole', from: 'cylinder', to: 'atmosphere' }, outOfCylinder),
    ],
    sealingGaps: sealingGaps(own, holes, edges, context),
    edges,
    events: {
      admission: wrappedAngle(admission),
      cutOff: wrappedAngle(cutOff),
      release: wrappedAngle(-backwardShuts),
      compression: wrappedAngle(-backwardOpens),
    },
    derivedSizes: sizes(own, holes),
    dragTorque: (angle, _speed, pressures) => torque(pressures) * Math.abs(swingRate(train, angle)),
    ...(own.reversing_tap === 'fitted'
      ? { reverse: { gear: () => build(withPipesExchanged(own), context), serves: true } }
      : {}),
  };
}

export const oscillatingCylinder = kindOf({
  kind: 'oscillating cylinder',
  doc: 'The cylinder rocks on a trunnion and swings its port over two holes. Here rod_length is the distance from crank centre to trunnion.',
  parameters: oscillatingCylinderParameters,
  contextWith: <C extends PartContext>(_own: unknown, context: C) => ({
    ...context,
    crank: { ...context.crank, oscillating: oscillatingTrain(context) },
  }),
  complaints: oscillatingCylinderComplaints,
  build,
});
