/**
 * An engine put together from its description: places, passages and cylinder ends as flat lists.
 *
 * Cylinders are alike: the valve gear of a side is built once, as its ends see the crank, and read `deadCentre` behind it.
 * Leaks are seen from the cover end.
 */
import type { Gas } from '../gas/gas.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { CrankTrain } from '../parts/crank-train.ts';
import { cylinderEnds, type Cylinder, type CylinderEnd } from '../parts/cylinder.ts';
import { partContext, type EngineSpec } from '../parts/engine-description.ts';
import type { Flywheel } from '../parts/flywheels/flywheel.ts';
import type { Friction } from '../parts/friction.ts';
import type { Load } from '../parts/loads/load.ts';
import type { PartContext } from '../parts/part-context.ts';
import type { Passage, Place, Port } from '../parts/passage.ts';
import { mirrored } from '../parts/valve-gears/mirrored.ts';
import { hosePassage, hoseVolume, regulatorPassage, type Supply } from '../parts/supply.ts';
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
  /** The gear is meant for the way the engine is to run: forward, or set over or alike both ways in reverse. */
  readonly gearServes: boolean;
  readonly admission: Port;
  readonly exhaust: Port;
  /** Its passages by their numbers in the engine's list. */
  readonly admissionPassage: number;
  readonly exhaustPassage: number;
  /** Leaks that can bring it air: from the chest, or from the other end. */
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
  /** Those of them at which a port opens or shuts; always with 0. */
  readonly events: readonly number[];
}

/** Only as long as needed to tell them apart. */
const cylinderName = ({ cylinder }: CylinderEnd, { cylinders }: Cylinder): string =>
  cylinders > 1 ? `cylinder ${cylinder + 1}` : '';

function endName(end: CylinderEnd, cylinder: Cylinder): string {
  const which = cylinder.action === 'double' ? `${end.side} end` : '';
  return [cylinderName(end, cylinder), which].filter(Boolean).join(', ') || 'cylinder';
}

/** Place numbers of what a passage may lead to, as one cylinder end sees them. */
type Seat = Readonly<Record<Place, number>>;

function seated(passage: Passage, seat: Seat, lag: number, owner: string): EnginePassage {
  return {
    name: owner === '' ? passage.name : `${owner}: ${passage.name}`,
    role: passage.role,
    from: seat[passage.from],
    to: seat[passage.to],
    lag,
    passage,
  };
}

/** What a passage belongs to: one end, or the cylinder as a whole. */
function ownerOf({ from, to }: Passage, end: CylinderEnd, cylinder: Cylinder): string {
  if (cylinder.cylinders === 1 && cylinder.action === 'single') return '';
  const ofOneEnd = (from === 'cylinder' || to === 'cylinder') && from !== 'other end' && to !== 'other end';
  return ofOneEnd ? endName(end, cylinder) : cylinderName(end, cylinder);
}

function portOf(gear: ValveGear, role: Port['role']): Port {
  const found = gear.ports.find((candidate) => candidate.role === role);
  if (found === undefined) throw new Error(`the valve gear has no ${role} port`);
  return found;
}

/** Fixed volumes in front of the admission valves; the chest is the last. */
function supplyVolumes(supply: Supply): Volume[] {
  const hose = hoseVolume(supply);
  if (supply.regulator === undefined)
    return [{ name: 'valve chest', fixedVolume: supply.chest_volume + hose }];
  return [
    { name: 'hose', fixedVolume: hose },
    { name: 'valve chest', fixedVolume: supply.chest_volume },
  ];
}

/** The places as each end sees them, in the order of the ends. */
function seatsOf(bareEnds: readonly CylinderEnd[], chest: number): Seat[] {
  const placeOf = (index: number): number => chest + 1 + index;
  return bareEnds.map((end, index) => {
    const twin = bareEnds.findIndex((other) => other.cylinder === end.cylinder && other.side !== end.side);
    return {
      supply: SUPPLY,
      atmosphere: ATMOSPHERE,
      hose: FIRST_VOLUME,
      chest,
      cylinder: placeOf(index),
      'other end': twin < 0 ? ATMOSPHERE : placeOf(twin),
    };
  });
}

/** From the source to the chest. */
function supplyPassages({ supply }: EngineSpec, gas: Gas, seat: Seat): EnginePassage[] {
  const { regulator, pressure } = supply;
  const row = [...(regulator ? [regulatorPassage(regulator, pressure, gas)] : []), hosePassage(supply, gas)];
  return row.map((passage) => seated(passage, seat, 0, ''));
}

/** What the cylinders have on one side. */
interface Fittings extends Pick<WorkingEnd, 'valveGear' | 'gearServes' | 'admission' | 'exhaust'> {
  readonly passages: readonly Passage[];
}

/** The gear of a side, and whether it is meant to drive the engine the way it is to run. */
function gearOf(
  { valve_gear, running_direction }: EngineSpec,
  side: CylinderEnd['side'],
  context: PartContext,
): Pick<WorkingEnd, 'valveGear' | 'gearServes'> {
  const crank = { ...context.crank, fromCrankEnd: side === 'crank' };
  const forward = valve_gear.build({ ...context, crank });
  if (running_direction === 'forward') return { valveGear: forward, gearServes: true };
  const { reverse } = forward;
  return { valveGear: reverse?.gear() ?? mirrored(forward), gearServes: reverse?.serves ?? false };
}

function fittingsOf(spec: EngineSpec, side: CylinderEnd['side'], context: PartContext): Fittings {
  const { valveGear, gearServes } = gearOf(spec, side, context);
  const leaks = side === 'cover' ? spec.leaks.map((leak) => leak.build(context)) : [];
  return {
    valveGear,
    gearServes,
    admission: portOf(valveGear, 'admission'),
    exhaust: portOf(valveGear, 'exhaust'),
    passages: [...valveGear.ports, ...valveGear.sealingGaps, ...leaks],
  };
}

/** Numbers of the leaks between an end and another volume. */
function leaksInto(place: number, passages: readonly EnginePassage[]): number[] {
  return passages.flatMap(({ role, from, to }, i) => {
    const other = from === place ? to : to === place ? from : ATMOSPHERE;
    return role === 'leak' && other >= FIRST_VOLUME ? [i] : [];
  });
}

/** Dead centres, where piston friction changes hands, and the edges of every end's gear. */
const engineEdges = (ends: readonly WorkingEnd[]): number[] =>
  inOrder(
    ends.flatMap(({ deadCentre, valveGear }) =>
      [0, Math.PI, ...valveGear.edges].map((edge) => wrappedAngle(edge + deadCentre)),
    ),
  );

const engineEvents = (ends: readonly WorkingEnd[]): number[] =>
  inOrder(
    ends.flatMap(({ deadCentre, valveGear: { events } }) =>
      [events.admission, events.cutOff, events.release, events.compression].map((event) =>
        wrappedAngle(event + deadCentre),
      ),
    ),
  );

/** Crank angles from 0 up, each once. */
function inOrder(all: readonly number[]): number[] {
  const ordered = [0, ...all].sort((a, b) => a - b);
  return ordered.filter(
    (angle, i) => i === 0 || (angle - ordered[i - 1]! > 1e-9 && angle < 2 * Math.PI - 1e-9),
  );
}

/** Builds a description that has passed its checks. */
export function buildEngine(spec: EngineSpec): Engine {
  const { cylinder, supply } = spec;
  const context = partContext(spec);
  const bareEnds = cylinderEnds(cylinder, spec.running_direction);
  const volumes = supplyVolumes(supply);
  const chest = FIRST_VOLUME + volumes.length - 1;
  const seats = seatsOf(bareEnds, chest);
  const cover = fittingsOf(spec, 'cover', context);
  const crank = cylinder.action === 'double' ? fittingsOf(spec, 'crank', context) : cover;
  const passages = supplyPassages(spec, context.gas, seats[0]!);
  const firstPassages = bareEnds.map((end, i) => {
    const first = passages.length;
    for (const passage of (end.side === 'cover' ? cover : crank).passages)
      passages.push(seated(passage, seats[i]!, end.deadCentre, ownerOf(passage, end, cylinder)));
    return first;
  });
  const ends = bareEnds.map((end, i): WorkingEnd => {
    const { passages: own, ...fittings } = end.side === 'cover' ? cover : crank;
    const place = seats[i]!.cylinder;
    return {
      ...end,
      ...fittings,
      name: endName(end, cylinder),
      place,
      admissionPassage: firstPassages[i]! + own.indexOf(fittings.admission),
      exhaustPassage: firstPassages[i]! + own.indexOf(fittings.exhaust),
      leaksIn: leaksInto(place, passages),
    };
  }) as [WorkingEnd, ...WorkingEnd[]];
  return {
    gas: context.gas,
    atmosphere: spec.atmosphere,
    supply: {
      pressure: supply.regulator?.inlet_pressure ?? supply.pressure,
      temperature: supply.temperature ?? spec.atmosphere.temperature,
    },
    cylinder,
    crank: context.crank,
    sweptVolume: ends.reduce((sum, end) => sum + end.sweptVolume, 0),
    chest,
    volumes: [...volumes, ...ends.map(({ name }) => ({ name }))],
    ends,
    passages,
    wallHeat: cylinder.wall_heat.build(context),
    flywheel: spec.flywheel.build(context),
    friction: spec.friction,
    load: spec.load.build(context),
    edges: engineEdges(ends),
    events: engineEvents(ends),
  };
}
