/** Lifted valves and barrel holes that cannot be made, or never open or shut, in words. */
import type { Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import { mm } from './in-words.ts';
import type { PistonLiftedValve } from './piston-lifted-valve-parameters.ts';
import { singleActingOnly } from './single-acting-only.ts';

/** Metal that must be left between two holes: half a millimetre, common practice, no source. */
const SMALLEST_WALL = 0.5e-3;

function seatComplaints(own: PistonLiftedValve): Complaint[] {
  const found: Complaint[] = [];
  if (own.valve_diameter <= own.seat_diameter)
    found.push({
      path: ['valve_diameter'],
      expected: `more than the seat's bore, ${mm(own.seat_diameter)}, or it drops through`,
      received: mm(own.valve_diameter),
    });
  if (own.pin_diameter >= own.seat_diameter)
    found.push({
      path: ['pin_diameter'],
      expected: `less than the seat's bore, ${mm(own.seat_diameter)}, in which it stands`,
      received: mm(own.pin_diameter),
    });
  return found;
}

function travelComplaints({ lift, exhaust }: PistonLiftedValve, stroke: number): Complaint[] {
  const found: Complaint[] = [];
  if (lift >= stroke)
    found.push({
      path: ['lift'],
      expected: `less than the stroke, ${mm(stroke)}, or the valve never shuts`,
      received: mm(lift),
    });
  if (exhaust.edge_from_top >= stroke)
    found.push({
      path: ['exhaust', 'edge_from_top'],
      expected: `less than the stroke, ${mm(stroke)}, or the piston never uncovers the holes`,
      received: mm(exhaust.edge_from_top),
    });
  return found;
}

function ringComplaints({ exhaust }: PistonLiftedValve, bore: number): Complaint[] {
  const { hole_count, hole_diameter } = exhaust;
  const most = Math.floor((Math.PI * bore) / (hole_diameter + SMALLEST_WALL));
  if (hole_count <= most) return [];
  return [
    {
      path: ['exhaust', 'hole_count'],
      expected: `at most ${most} holes of this diameter round this bore, 0.5 mm left between them`,
      received: String(hole_count),
    },
  ];
}

export function pistonLiftedValveComplaints(
  own: PistonLiftedValve,
  context: PartContext,
): readonly Complaint[] {
  const { crank, bore } = context;
  return [
    ...singleActingOnly('a piston-lifted valve', context),
    ...seatComplaints(own),
    ...travelComplaints(own, 2 * crank.crankRadius),
    ...ringComplaints(own, bore),
  ];
}
