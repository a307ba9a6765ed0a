/** Slide valves that cannot be made or set, in words. */
import type { Complaint } from '../../kinds/kind.ts';
import { mm } from './in-words.ts';
import type { SlideValve } from './slide-valve.ts';

function lapComplaints({ steamLap, exhaustLap, eccentricity }: SlideValve): Complaint[] {
  const found: Complaint[] = [];
  if (steamLap >= eccentricity)
    found.push({
      path: ['steam_lap'],
      expected: `less than half the travel, ${mm(eccentricity)}, or the port never opens to the chest`,
      received: mm(steamLap),
    });
  if (exhaustLap >= eccentricity)
    found.push({
      path: ['exhaust_lap'],
      expected: `less than half the travel, ${mm(eccentricity)}, or the port never opens to the exhaust`,
      received: mm(exhaustLap),
    });
  if (steamLap + exhaustLap < 0)
    found.push({
      path: ['exhaust_lap'],
      expected: `at least ${mm(-steamLap)} with this steam lap, or the land is narrower than the port and air blows past it`,
      received: mm(exhaustLap),
    });
  return found;
}

function leadComplaints({ steamLap, lead, eccentricity }: SlideValve): Complaint[] {
  if (Math.abs(steamLap + lead) < eccentricity) return [];
  return [
    {
      path: ['lead'],
      expected: `between ${mm(-eccentricity - steamLap)} and ${mm(eccentricity - steamLap)}, or no setting of the eccentric gives it`,
      received: mm(lead),
      hint: 'Steam lap and lead together must stay below half the travel.',
    },
  ];
}

function barComplaints({ eccentricity, steamLap, portWidth, barWidth }: SlideValve): Complaint[] {
  const shortest = eccentricity - steamLap - portWidth;
  if (barWidth > shortest) return [];
  return [
    {
      path: ['bar_width'],
      expected: `more than ${mm(shortest)}, or the steam edge of the valve passes the bar and lets the chest into the exhaust`,
      received: mm(barWidth),
    },
  ];
}

export function slideValveComplaints(valve: SlideValve): readonly Complaint[] {
  const ofLaps = lapComplaints(valve);
  // Without sound laps there is no setting to speak of.
  return ofLaps.length > 0 ? ofLaps : [...leadComplaints(valve), ...barComplaints(valve)];
}
