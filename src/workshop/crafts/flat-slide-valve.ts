/** Port face, valve and eccentric of a flat slide valve. */
import type { Complaint } from '../../kinds/kind.ts';
import {
  flatSlideValve,
  flatSlideValveParameters,
  type FlatSlideValve,
} from '../../parts/valve-gears/flat-slide-valve.ts';
import { degrees, inMm, mm } from '../drawing/words.ts';
import { planSlide, type SlidePlan } from '../slides/slide-plan.ts';
import { eccentric, portFace, slideValveDrawing } from '../slides/slide-drawings.ts';
import { craftOf, type Made, type Order } from './craft.ts';

/** An exhaust port must be left between the bars. */
function complaintsOf({ own, exhaustWidth }: SlidePlan): Complaint[] {
  if (exhaustWidth >= own.port_width) return [];
  return [
    {
      path: ['cavity_length'],
      expected: `at least ${inMm(own.cavity_length + own.port_width - exhaustWidth)}, to leave room for an exhaust port as wide as the cylinder port`,
      received: inMm(own.cavity_length),
    },
  ];
}

const adjustment = ({ lead }: FlatSlideValve, advance: number): string[] => [
  'Set the length of the valve rod first: turn the shaft through a whole turn and make the valve open its port, or both its ports, as far beyond the edge at one end as at the other.',
  `Put the crank at top dead centre and turn the eccentric on its shaft, the way the engine runs, to ${degrees(Math.PI / 2 + advance)} ahead of the crank.`,
  lead > 0
    ? `Turn it on until a feeler of ${mm(lead)} mm, the lead, just goes in at the edge of the port. Tighten.`
    : 'Turn it on until the edge of the valve stands as the lead of the scenario says. Tighten.',
  'The four events are tied together: check cut-off and release, and if they are off by more than a degree or two, measure the laps again.',
  'Turn it over by hand through two full turns before the air is put on; the air then presses the valve on its face.',
];

function make(own: FlatSlideValve, { context, deadCentre }: Order): Made {
  // One valve serves both ends of a cylinder; it is drawn with the cover end.
  if (deadCentre === 'BDC') return { parts: [], adjustment: [], complaints: [] };
  const plan = planSlide(own, context.doubleActing);
  const complaints = complaintsOf(plan);
  if (complaints.length > 0) return { parts: [], adjustment: [], complaints };
  return {
    parts: [portFace(plan), slideValveDrawing(plan), eccentric(plan)],
    adjustment: adjustment(own, plan.advance),
    complaints: [],
  };
}

export const flatSlideValveCraft = craftOf(flatSlideValve, flatSlideValveParameters, make);
