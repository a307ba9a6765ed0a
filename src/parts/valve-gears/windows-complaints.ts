/** Windows that cannot be, in words. */
import type { Complaint } from '../../kinds/kind.ts';
import type { PartContext } from '../part-context.ts';
import { degrees, mm } from './in-words.ts';
import { windowLength } from './window.ts';
import { portNames, SHORTEST_RAMP, windowOf, type PortName, type Windows } from './windows-parameters.ts';

function sizeComplaints(gear: Windows, name: PortName): Complaint[] {
  const { area, hole_diameter } = gear[name];
  if (area === undefined && hole_diameter === undefined)
    return [
      {
        path: [name, 'area'],
        expected: 'how large the port is, as an `area` or a `hole_diameter`',
        received: 'neither',
      },
    ];
  if (area === undefined || hole_diameter === undefined) return [];
  return [
    {
      path: [name, 'hole_diameter'],
      expected: 'either an `area` or a `hole_diameter`',
      received: `both, ${(area * 1e6).toFixed(1)} mm2 and ${mm(hole_diameter)}`,
    },
  ];
}

function timingComplaints(gear: Windows, name: PortName, context: PartContext): Complaint[] {
  const window = windowOf(gear[name], context);
  const duration = windowLength(window);
  if (duration < 2 * SHORTEST_RAMP)
    return [
      {
        path: [name, 'closes'],
        expected: `open for at least ${degrees(2 * SHORTEST_RAMP)} of the turn`,
        received: degrees(duration),
      },
    ];
  if (2 * window.ramp <= duration) return [];
  return [
    {
      path: [name, 'ramp'],
      expected: `at most ${degrees(duration / 2)}, so that both ramps fit between opening and closing`,
      received: degrees(window.ramp),
    },
  ];
}

export const windowsComplaints = (gear: Windows, context: PartContext): readonly Complaint[] =>
  portNames.flatMap((name) => [...sizeComplaints(gear, name), ...timingComplaints(gear, name, context)]);
