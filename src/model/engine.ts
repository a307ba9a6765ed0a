/**
 * An engine put together from its description: places, passages and cylinder ends as flat lists.
 *
 * Each cylinder end has its own valve gear, built as that end sees the crank and read `deadCentre` behind it. Leaks are
 * built once per cylinder, seen from its cover end.
 */
import type { Gas } from '../gas/gas.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { CrankTrain } from '../parts/crank-train.ts';
import { crankTrain, cylinderEnds, type Cylinder, type CylinderEnd } from '../parts/cylinder.ts';
import { partContext, type EngineSpec } from '../parts/engine-description.ts';
import type { Flywheel } from '../parts/flywheels/flywheel.ts';
import type { Friction } from '../parts/friction.ts';
import type { Load } from '../parts/loads/load.ts';
import type { Passage, Place, Port } from '../parts/passage.ts';
import { hosePassage, hoseVolume, regulatorPassage } from '../parts/supply.ts';
import type { ValveGear } from '../parts/valve-gears/valve-gear.ts';
import type { WallHeat } from '../parts/wall-heat/wall-heat.ts';

export interface GasState {
  readonly pressure: number;
  readonly temperature: number;
}

/** Places by number: two that never change, then the volumes. */
export const SUPPLY = 0;
export const ATMOSPHERE = 1;
export const FIRST_VOLUME = 2;

/** A gas volume; that of a cylinder end changes with the crank. */
export interface Volume {
  readonly name: string;
  /** Its volume [m³] when it is fixed. */
  readonly fixedVolume?: number;
}

/** A cylinder end with its gear and its place among the volumes. */
export interface WorkingEnd extends CylinderEnd {
  readonly name: string;
  /** Number of its place. */
  readonly place: number;
  readonly valveGear: ValveGear;
  readonly admission: Port;
  readonly exhaust: Port;
  /** Its passages by their numbers in the engine's list. */
  readonly admissionPassage: number;
  readonly exhaustPassage: number;
  readonly leaksIn: readonly number[];
}

/** A passage of the engine: between which places, and how far behind the crank its part reckons. */
export interface EnginePassage {
  readonly name: string;
  readonly role: Passage['role'];
  readonly from: number;
  readonly to: number;
  readonly lag: number;
  readonly passage: Passage;
}

export interface Engine {
  readonly gas: Gas;
  readonly atmosphere: GasState;
  readonly supply: GasState;
  readonly cylinder: Cylinder;
  readonly crank: CrankTrain;
  readonly sweptVolume: number;
  /** The volume right in front of the admission valves, as a place number. */
  readonly chest: number;
  readonly volumes: readonly Volume[];
  readonly ends: readonly [WorkingEnd, ...WorkingEnd[]];
  readonly passages: readonly EnginePassage[];
  readonly wallHeat: WallHeat;
  readonly flywheel: Flywheel;
  readonly friction: Friction;
  readonly load: Load;
  /** Crank angles [0, 2π), ascending, where the right-hand side kinks; always with 0. */
  readonly edges: readonly number[];
}

/** Names of the ends: only as long as needed to tell them apart. */
function endName({ cylinder, side }: CylinderEnd, { cylinders, action }: Cylinder): string {
  const number = cylinders > 1 ? `cylinder ${cylinder + 1}` : '';
  const which = action === 'double' ? `${side} end` : '';
  return [number, which].filter(Boolean).join(' ') || 'cylinder';
}

/** Where the places of the parts stand in the engine's list. */
interface Places {
  readonly hose: number;
  readonly chest: number;
  readonly ends: readonly number[];
}

function placeNumber(places: Places, place: Place, own: number, other: number): number {
  const numbers: Readonly<Record<Place, number>> = {
    supply: SUPPLY,
    atmosphere: ATMOSPHERE,
    hose: places.hose,
    chest: places.chest,
    cylinder: own,
    'other end': other,
  };
  return numbers[place];
}

interface Seat {
  /** Prefix for names; empty with a single end. */
  readonly prefix: string;
  readonly own: number;
  readonly other: number;
  readonly lag: number;
}

function seated(places: Places, passage: Passage, seat: Seat): EnginePassage {
  const number = (place: Place): number => placeNumber(places, place, seat.own, seat.other);
  return {
    name: seat.prefix + passage.name,
    role: passage.role,
    from: number(passage.from),
    to: number(passage.to),
    lag: seat.lag,
    passage,
  };
}

function portOf(gear: ValveGear, role: Port['role']): Port {
  const found = gear.ports.find((candidate) => candidate.role === role);
  if (found === undefined) throw new Error(`the valve gear has no ${role} port`);
  return found;
}

/** Dead centres, where piston friction changes hands, and the edges of every end's gear. */
function engineEdges(ends: readonly WorkingEnd[]): number[] {
  const all = ends.flatMap(({ deadCentre, valveGear }) =>
    [0, Math.PI, ...valveGear.edges].map((edge) => wrappedAngle(edge + deadCentre)),
  );
  const ordered = [0, ...all].sort((a, b) => a - b);
  return ordered.filter(
    (angle, i) => i === 0 || (angle - ordered[i - 1]! > 1e-9 && angle < 2 * Math.PI - 1e-9),
  );
}

/** Builds a description that has passed its checks. */
export function buildEngine(spec: EngineSpec): Engine {
  const { cylinder, supply } = spec;
  const context = partContext(spec);
  const bareEnds = cylinderEnds(cylinder);
  const volumes: Volume[] = supply.regulator
    ? [
        { name: 'hose', fixedVolume: hoseVolume(supply) },
        { name: 'valve chest', fixedVolume: supply.chest_volume },
      ]
    : [{ name: 'valve chest', fixedVolume: supply.chest_volume + hoseVolume(supply) }];
  const chest = FIRST_VOLUME + volumes.length - 1;
  const places: Places = { hose: FIRST_VOLUME, chest, ends: bareEnds.map((_, i) => chest + 1 + i) };
  const single = bareEnds.length === 1;
  const seatOf = (index: number): Seat => {
    const end = bareEnds[index]!;
    const twin = bareEnds.findIndex((other) => other.cylinder === end.cylinder && other.side !== end.side);
    return {
      prefix: single ? '' : `${endName(end, cylinder)}: `,
      own: places.ends[index]!,
      other: twin < 0 ? ATMOSPHERE : places.ends[twin]!,
      lag: end.deadCentre,
    };
  };
  const shared: Seat = { prefix: '', own: ATMOSPHERE, other: ATMOSPHERE, lag: 0 };
  const passages: EnginePassage[] = [
    ...(supply.regulator ? [regulatorPassage(supply.regulator, supply.pressure, context.gas)] : []),
    hosePassage(supply, context.gas),
  ].map((passage) => seated(places, passage, shared));
  const ends = bareEnds.map((end, index): WorkingEnd => {
    const valveGear = spec.valve_gear.build({ ...context, crank: crankTrain(cylinder, end.side) });
    const leaks = end.side === 'cover' ? spec.leaks.map((leak) => leak.build(context)) : [];
    const first = passages.length;
    const own = [...valveGear.ports, ...valveGear.sealingGaps, ...leaks];
    passages.push(...own.map((passage) => seated(places, passage, seatOf(index))));
    const admission = portOf(valveGear, 'admission');
    const exhaust = portOf(valveGear, 'exhaust');
    return {
      ...end,
      name: endName(end, cylinder),
      place: places.ends[index]!,
      valveGear,
      admission,
      exhaust,
      admissionPassage: first + own.indexOf(admission),
      exhaustPassage: first + own.indexOf(exhaust),
      leaksIn: own.flatMap(({ role, from, to }, i) =>
        role === 'leak' && from === 'chest' && to === 'cylinder' ? [first + i] : [],
      ),
    };
  });
  const [firstEnd, ...otherEnds] = ends as [WorkingEnd, ...WorkingEnd[]];
  return {
    gas: context.gas,
    atmosphere: spec.atmosphere,
    supply: {
      pressure: supply.regulator?.inlet_pressure ?? supply.pressure,
      temperature: supply.temperature ?? spec.atmosphere.temperature,
    },
    cylinder,
    crank: crankTrain(cylinder),
    sweptVolume: ends.reduce((sum, end) => sum + end.sweptVolume, 0),
    chest,
    volumes: [...volumes, ...ends.map(({ name }) => ({ name }))],
    ends: [firstEnd, ...otherEnds],
    passages,
    wallHeat: cylinder.wall_heat.build(context),
    flywheel: spec.flywheel.build(context),
    friction: spec.friction,
    load: spec.load.build(context),
    edges: engineEdges(ends),
  };
}
