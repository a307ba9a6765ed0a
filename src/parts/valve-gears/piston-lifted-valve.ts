/**
 * A ball or poppet in the cover, lifted off its seat by a pin on the piston near top dead centre; a ring of holes in the
 * barrel, uncovered by the piston near bottom dead centre. There is nothing to time it by but the piston itself:
 *
 *   lift       s = lift at top dead centre − travel, or nothing          opening: seat-opening.ts
 *   exhaust    n circles of diameter d, each open to a height of travel − edge
 *
 * So each opening lies the same angle before as after its dead centre. The engine cannot start by itself, must be
 * pushed, and then runs either way.
 *
 * The valve is a check valve too: when the cylinder stands above the chest it is blown off its seat, pin or no pin
 * (check-lift.ts), and the air goes back into the chest.
 *
 * Leak: a gap round the shut seat, as a straight slit as long as the seat's rim; none by default.
 * Drag: the pin bears the spring and what the chest presses on the seat's bore above the cylinder, through |x′| while the
 * valve is lifted, on the way up only; what the valve gives back on the way down is left out. Assumes that the valve follows
 * the pin.
 */
import { kindOf } from '../../kinds/kind.ts';
import { slitResistance } from '../../gas/gap.ts';
import { nozzleFlow } from '../../gas/nozzle.ts';
import { cos, sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import { angleAtStrokeFraction, pistonTravel, pistonTravelRate, type CrankTrain } from '../crank-train.ts';
import { FULL_TURN, wrappedAngle } from '../crank-positions.ts';
import { segmentArea } from '../geometry/circles.ts';
import type { PartContext } from '../part-context.ts';
import { gap, openingLaw, port, type Opening, type Passage, type Port } from '../passage.ts';
import { thereAndBack } from '../turn-table.ts';
import { checkLift } from './check-lift.ts';
import { pistonLiftedValveComplaints } from './piston-lifted-valve-complaints.ts';
import {
  liftedSeat,
  pistonLiftedValveParameters,
  type PistonLiftedValve,
} from './piston-lifted-valve-parameters.ts';
import { liftWhereBoreLimits, seatOpening } from './seat-opening.ts';
import { orderedEdges, type ValveGear } from './valve-gear.ts';

/** Way of the piston from top dead centre [m] at a crank angle. */
const travelAt = (crank: CrankTrain, angle: number): number => pistonTravel(crank, sin(angle), cos(angle));

/** Crank angle on the outward stroke at which the piston has come a way from top dead centre. */
const angleAtTravel = (crank: CrankTrain, travel: number): number =>
  angleAtStrokeFraction(crank, travel / (2 * crank.crankRadius));

/** A law that is alike on either side of a dead centre and nothing beyond the last of some angles from it. */
function aboutDeadCentre(
  law: (angle: number) => number,
  centre: 0 | 180,
  bends: readonly (number | undefined)[],
): Opening {
  const at = centre === 0 ? 0 : Math.PI;
  return thereAndBack(
    (fromCentre) => law(at + fromCentre),
    [0, ...bends.map((angle) => -(angle ?? 0))],
    { leaves: at, returns: at, perStageThere: 1, perStageBack: 1 },
    0,
  );
}

/** The seat: opened by the pin as the crank goes, and further by a cylinder that stands above the chest. */
function admissionPort(own: PistonLiftedValve, { gas, crank }: PartContext): Port {
  const seat = liftedSeat(own);
  const check = checkLiftOf(own);
  const limit = liftWhereBoreLimits(seat, own.lift);
  const area = (lift: number): number => own.discharge_coefficient * seatOpening(seat, lift);
  const pinned = aboutDeadCentre((angle) => area(Math.max(0, own.lift - travelAt(crank, angle))), 0, [
    limit === undefined ? undefined : angleAtTravel(crank, own.lift - limit),
    angleAtTravel(crank, own.lift),
  ]);
  const pinnedArea = openingLaw(pinned);
  return {
    name: 'valve in the cover',
    role: 'admission',
    from: 'chest',
    to: 'cylinder',
    selfActing: true,
    effectiveArea: pinnedArea,
    massFlow: (angle, pFrom, tFrom, pTo, tTo, speed) => {
      const byPin = pinnedArea(angle, speed);
      if (pFrom >= pTo) return byPin === 0 ? 0 : nozzleFlow(gas, byPin, pFrom, tFrom, pTo);
      const open = Math.max(byPin, area(check(pTo - pFrom)));
      return open === 0 ? 0 : -nozzleFlow(gas, open, pTo, tTo, pFrom);
    },
  };
}

function exhaustArea(own: PistonLiftedValve, crank: CrankTrain): Opening {
  const { hole_count, hole_diameter, edge_from_top } = own.exhaust;
  const perHole = own.discharge_coefficient * hole_count;
  const openedWhole = edge_from_top + hole_diameter;
  return aboutDeadCentre(
    (angle) => perHole * segmentArea(hole_diameter / 2, travelAt(crank, angle) - edge_from_top),
    180,
    [
      openedWhole < 2 * crank.crankRadius ? Math.PI - angleAtTravel(crank, openedWhole) : undefined,
      Math.PI - angleAtTravel(crank, edge_from_top),
    ],
  );
}

/** Crank angles at which an opening starts, ends or kinks, on either side of the dead centres. */
function edges(own: PistonLiftedValve, { crank }: PartContext): number[] {
  const { hole_diameter, edge_from_top } = own.exhaust;
  const limit = liftWhereBoreLimits(liftedSeat(own), own.lift);
  const travels = [own.lift, edge_from_top, edge_from_top + hole_diameter];
  if (limit !== undefined) travels.push(own.lift - limit);
  const outward = travels
    .filter((travel) => travel < 2 * crank.crankRadius)
    .map((travel) => angleAtTravel(crank, travel));
  // The lifting force lets go at top dead centre.
  return orderedEdges([0, ...outward, ...outward.map((angle) => -angle)]);
}

function seatLeak(own: PistonLiftedValve, { gas }: PartContext): Passage[] {
  const h = own.seat_gap;
  if (h === 0) return [];
  const rim = Math.PI * own.seat_diameter;
  return [
    gap(
      gas,
      { name: 'past the shut valve seat', from: 'chest', to: 'cylinder' },
      slitResistance(Math.max(h, own.seat_width), rim, h),
      rim * h,
    ),
  ];
}

/** [m²]. */
const seatBore = ({ seat_diameter }: PistonLiftedValve): number => (Math.PI / 4) * square(seat_diameter);

const checkLiftOf = (own: PistonLiftedValve): ((excess: number) => number) =>
  checkLift({ seatArea: seatBore(own), springForce: own.spring_force, rise: own.rise ?? own.lift });

function build(own: PistonLiftedValve, context: PartContext): ValveGear {
  const { gas, crank } = context;
  const shuts = angleAtTravel(crank, own.lift);
  const uncovers = angleAtTravel(crank, own.exhaust.edge_from_top);
  const bore = seatBore(own);
  const gear: ValveGear = {
    ports: [
      admissionPort(own, context),
      port(
        gas,
        'exhaust',
        { name: 'holes in the barrel', from: 'cylinder', to: 'atmosphere' },
        exhaustArea(own, crank),
      ),
    ],
    sealingGaps: seatLeak(own, context),
    edges: edges(own, context),
    events: {
      admission: wrappedAngle(-shuts),
      cutOff: shuts,
      release: uncovers,
      compression: wrappedAngle(-uncovers),
    },
    derivedSizes: [
      { label: 'valve lifted, either side of top dead centre', value: shuts, dimension: 'angle' },
      {
        label: 'holes open, either side of bottom dead centre',
        value: Math.PI - uncovers,
        dimension: 'angle',
      },
      {
        label: 'greatest height of the holes that is uncovered',
        value: Math.min(own.exhaust.hole_diameter, 2 * crank.crankRadius - own.exhaust.edge_from_top),
        dimension: 'length',
      },
    ],
    dragTorque: (angle, _speed, { chest, cylinder }) => {
      if (wrappedAngle(angle) < FULL_TURN - shuts) return 0;
      const onPin = Math.max(0, own.spring_force + (chest - cylinder) * bore);
      return onPin * Math.abs(pistonTravelRate(crank, sin(angle), cos(angle)));
    },
  };
  // There is nothing in it that knows which way it is passed.
  return { ...gear, reverse: { gear: () => gear, serves: true } };
}

export const pistonLiftedValve = kindOf({
  kind: 'piston-lifted valve',
  doc: 'A ball or poppet in the cover, lifted by a pin on the piston; exhaust through holes in the barrel. Must be pushed to start.',
  parameters: pistonLiftedValveParameters,
  // With little clearance the piston would squeeze what the holes have shut in above the pressure of the chest.
  firstEngine: { values: { 'cylinder.clearance': '50 %', 'start.hand_speed': '300 rpm' } },
  complaints: pistonLiftedValveComplaints,
  build,
});
