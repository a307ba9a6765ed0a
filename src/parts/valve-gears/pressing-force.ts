/**
 * What presses a flat slide valve on its face: the chest on its whole back, less what stands under it.
 *
 *   N = (p_chest − p_room) A_hollow + Σ (p_chest − p_port) A_port + (p_chest − p̄) A_land,  never below nothing
 *
 * A_hollow = hollow × port length; A_port the part of each port that the land covers, open neither to the chest nor to the
 * hollow; A_land the laps and the rim, under which the air falls from chest to room (mean p̄: face-push.ts). A double-acting
 * valve has two ports. Friction μN is common practice; the areas are plain geometry.
 */
import type { PartContext } from '../part-context.ts';
import { meanFilmPressure } from './face-push.ts';
import { admissionOpening, exhaustOpening, type SlideValve } from './slide-valve.ts';
import type { GearPressures } from './valve-gear.ts';

interface FlatFace {
  readonly valve: SlideValve;
  /** Across the travel [m]. */
  readonly portLength: number;
  readonly cavityLength: number;
  readonly rimWidth: number;
}

export function pressingForce(
  { valve, portLength, cavityLength, rimWidth }: FlatFace,
  { doubleActing, atmosphericPressure: room }: PartContext,
): (displacement: number, pressures: GearPressures) => number {
  const hollow = cavityLength * portLength;
  const ports = doubleActing ? 2 : 1;
  const lapArea = ports * Math.max(0, valve.steamLap + valve.exhaustLap) * portLength;
  const farEnd = doubleActing ? 0 : portLength;
  const lands = lapArea + rimWidth * (2 * cavityLength + farEnd);
  const covered = (displacement: number): number =>
    portLength *
    (valve.portWidth - admissionOpening(valve, displacement) - exhaustOpening(valve, displacement));
  return (displacement, { chest, cylinder, otherEnd }) => {
    const other = doubleActing ? (chest - otherEnd) * covered(-displacement) : 0;
    const force =
      (chest - room) * hollow +
      (chest - cylinder) * covered(displacement) +
      other +
      (chest - meanFilmPressure(chest, room)) * lands;
    return Math.max(0, force);
  };
}
