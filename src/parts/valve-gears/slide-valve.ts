/**
 * Geometry of a slide valve on one eccentric, flat or round. Lengths along the travel, seen at the cover-end port.
 *
 * The eccentric stands 90° and the angle of advance δ ahead of the crank, so that the valve is away from its middle
 * position, towards opening the port to the chest, by
 *
 *   s = e sin(θ + δ),  sin δ = (steam lap + lead)/e,  e = half the travel
 *
 *   opening to the chest    = s − steam lap,     from 0 to the port's width
 *   opening to the exhaust  = −s − exhaust lap,  from 0 to the port's width
 *   land on the steam side  = steam lap − s
 *   land over the bar       = exhaust lap + s, at most the bar, less what the steam edge has bared of it
 *
 * Assumes an eccentric rod so long that the valve moves harmonically. Source: the valve diagrams of Reuleaux and Zeuner,
 * theory-of-machines texts (docs/valve-gears/flat-slide-valve.md).
 */
import { asin } from '../../numerics/elementary/inverse-trigonometric.ts';
import { sin } from '../../numerics/elementary/trigonometric.ts';
import { wrappedAngle } from '../crank-positions.ts';
import type { Opening } from '../passage.ts';
import { thereAndBack } from '../turn-table.ts';
import { orderedEdges, type ValveEvents } from './valve-gear.ts';

export interface SlideValve {
  /** e, half the travel [m]; larger than either lap. */
  readonly eccentricity: number;
  readonly steamLap: number;
  /** Negative when the port stands open to the exhaust in the valve's middle position. */
  readonly exhaustLap: number;
  /** Opening to the chest at top dead centre [m]. */
  readonly lead: number;
  readonly portWidth: number;
  /** Metal between the port and the exhaust [m]. */
  readonly barWidth: number;
}

/** A length at a displacement s of the valve [m]. */
export type DisplacementLaw = (displacement: number) => number;

const between = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/** δ [rad]. */
export const angleOfAdvance = ({ steamLap, lead, eccentricity }: SlideValve): number =>
  asin((steamLap + lead) / eccentricity);

/** s [m] at a crank angle [rad]. */
export function displacementLaw(valve: SlideValve): (angle: number) => number {
  const advance = angleOfAdvance(valve);
  return (angle) => valve.eccentricity * sin(angle + advance);
}

export const admissionOpening = (valve: SlideValve, displacement: number): number =>
  between(0, displacement - valve.steamLap, valve.portWidth);

export const exhaustOpening = (valve: SlideValve, displacement: number): number =>
  between(0, -displacement - valve.exhaustLap, valve.portWidth);

/** Land between the chest and the port; never counted shorter than the gap is high. */
export const steamLand = (valve: SlideValve, displacement: number, gapHeight: number): number =>
  Math.max(gapHeight, valve.steamLap - displacement);

/** Land between the port and the exhaust; never counted shorter than the gap is high. */
export function exhaustLand(valve: SlideValve, displacement: number, gapHeight: number): number {
  const covered = Math.min(valve.barWidth, valve.exhaustLap + displacement);
  const bared = Math.max(0, displacement - valve.steamLap - valve.portWidth);
  return Math.max(gapHeight, covered - bared);
}

/** The two crank angles [rad] at which the valve stands at a displacement; none beyond its travel. */
function crossings(valve: SlideValve, displacement: number): number[] {
  if (Math.abs(displacement) >= valve.eccentricity) return [];
  const advance = angleOfAdvance(valve);
  const angle = asin(displacement / valve.eccentricity);
  return [angle - advance, Math.PI - angle - advance];
}

/** Displacements [m] at which an opening or a land bends; below and above all of them it changes no more. */
export const admissionBends = ({ steamLap, portWidth }: SlideValve): readonly number[] => [
  steamLap,
  steamLap + portWidth,
];

export const exhaustBends = ({ exhaustLap, portWidth }: SlideValve): readonly number[] => [
  -exhaustLap - portWidth,
  -exhaustLap,
];

export const steamLandBends = (
  { eccentricity, steamLap }: SlideValve,
  gapHeight: number,
): readonly number[] => [-eccentricity, steamLap - gapHeight];

export const exhaustLandBends = (
  { steamLap, exhaustLap, portWidth, barWidth }: SlideValve,
  gapHeight: number,
): readonly number[] => [
  gapHeight - exhaustLap,
  barWidth - exhaustLap,
  steamLap + portWidth,
  // Where the land over the bar, bared by the steam edge, is down to the gap's height.
  steamLap + portWidth + barWidth - gapHeight,
];

/** Crank angles at which an opening or a land starts, ends or kinks, and where the valve turns back. */
export function slideValveEdges(valve: SlideValve, gapHeight: number): number[] {
  const displacements = [
    ...admissionBends(valve),
    ...exhaustBends(valve),
    ...steamLandBends(valve, gapHeight),
    ...exhaustLandBends(valve, gapHeight),
  ];
  const turnsBack = Math.PI / 2 - angleOfAdvance(valve);
  return orderedEdges([
    ...displacements.flatMap((displacement) => crossings(valve, displacement)),
    turnsBack,
    turnsBack + Math.PI,
  ]);
}

/** What goes with the displacement and bends at some of them, over the turn. */
export function overTravel(valve: SlideValve, law: DisplacementLaw, bends: readonly number[]): Opening {
  const { eccentricity } = valve;
  const advance = angleOfAdvance(valve);
  return thereAndBack(
    (fromMiddle) => law(eccentricity * sin(fromMiddle)),
    bends.map((displacement) => asin(between(-1, displacement / eccentricity, 1))),
    { leaves: -advance, returns: Math.PI - advance, perStageThere: 1, perStageBack: 1 },
    law(-eccentricity),
  );
}

/** The four events, tied together by the one eccentric. */
export function slideValveEvents(valve: SlideValve): ValveEvents {
  const advance = angleOfAdvance(valve);
  const steam = asin(valve.steamLap / valve.eccentricity);
  const exhaust = asin(valve.exhaustLap / valve.eccentricity);
  return {
    admission: wrappedAngle(steam - advance),
    cutOff: wrappedAngle(Math.PI - steam - advance),
    release: wrappedAngle(Math.PI + exhaust - advance),
    compression: wrappedAngle(-exhaust - advance),
  };
}
