/** Spools and cams that cannot be made, in words. */
import type { Complaint } from '../../kinds/kind.ts';
import { clearanceComplaints } from '../fits/clearance.ts';
import { crankAngle, forwardAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import { camOf, type CamSpools, type SpoolName } from './cam-spools-parameters.ts';

const mm = (length: number): string => `${(length * 1e3).toFixed(2)} mm`;
const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)} deg`;

function sizeComplaints(gear: CamSpools, name: SpoolName): Complaint[] {
  const spool = gear[name];
  const found: Complaint[] = [
    ...clearanceComplaints([name, 'clearance'], 'spool_diameter', spool.spool_diameter, spool.clearance),
  ];
  if (spool.hole_diameter >= spool.spool_diameter)
    found.push({
      path: [name, 'hole_diameter'],
      expected: `less than the spool diameter, ${mm(spool.spool_diameter)}`,
      received: mm(spool.hole_diameter),
      hint: 'A cross hole as wide as the bore leaves no land to seal on; three fifths is a good measure.',
    });
  if (spool.waist_diameter >= spool.spool_diameter)
    found.push({
      path: [name, 'waist_diameter'],
      expected: `less than the spool diameter, ${mm(spool.spool_diameter)}`,
      received: mm(spool.waist_diameter),
    });
  if (spool.lift <= spool.lash + spool.lap)
    found.push({
      path: [name, 'lift'],
      expected: `more than lash and lap together, ${mm(spool.lash + spool.lap)}, or the port never opens`,
      received: mm(spool.lift),
    });
  const past = spool.lash + spool.lap + spool.waist_length;
  if (spool.lift > past)
    found.push({
      path: [name, 'lift'],
      expected: `at most lash, lap and waist length together, ${mm(past)}, or the waist runs past the hole`,
      received: mm(spool.lift),
    });
  return found;
}

function timingComplaints(gear: CamSpools, name: SpoolName, context: PartContext): Complaint[] {
  const { flank, closing_flank, lift, lash, lap, opens, closes } = gear[name];
  if (lift <= lash + lap) return [];
  const { duration, closingFlank } = camOf(gear, name, context);
  const flanks = flank + closingFlank;
  if (duration < flanks) {
    // Shorter flanks also begin later and end earlier: what they take of the opening goes with their length.
    const open = forwardAngle(crankAngle(context.crank, opens), crankAngle(context.crank, closes));
    const longest = (flanks * open) / (open + flanks - duration);
    const most = closing_flank === undefined ? longest / 2 : Math.max(0, longest - flank);
    return [
      {
        path: [name, closing_flank === undefined ? 'flank' : 'closing_flank'],
        expected: `at most ${degrees(most)}, so that rise and fall fit between opening and closing`,
        received: degrees(closingFlank),
        hint: 'Open the port for longer, or make the flank steeper.',
      },
    ];
  }
  if (duration <= 2 * Math.PI) return [];
  return [
    {
      path: [name, 'closes'],
      expected: 'a cam that is back on its base circle within one turn',
      received: `rise, dwell and fall over ${degrees(duration)}`,
    },
  ];
}

export function camSpoolsComplaints(gear: CamSpools, context: PartContext): readonly Complaint[] {
  const names: readonly SpoolName[] = ['admission', 'exhaust'];
  return names.flatMap((name) => [...sizeComplaints(gear, name), ...timingComplaints(gear, name, context)]);
}
