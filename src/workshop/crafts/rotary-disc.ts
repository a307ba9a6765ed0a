/** Disc, plates and spacers of a rotary disc valve. */
import { rotaryDisc } from '../../parts/valve-gears/rotary-disc.ts';
import { rotaryDiscParameters, type RotaryDisc } from '../../parts/valve-gears/rotary-disc-parameters.ts';
import { discDrawing } from '../discs/disc-drawing.ts';
import { discPlanComplaints, planDisc } from '../discs/disc-plan.ts';
import { backPlate, frontPlate, spacer } from '../discs/plate-drawings.ts';
import { degrees } from '../drawing/words.ts';
import { craftOf, type Made, type Order } from './craft.ts';

function adjustment({ slots, plates, body_advance: advance, face_gap: gap }: RotaryDisc): string[] {
  return [
    `Put the stack together dry with its spacers and try the gap: the disc must turn freely, and a shim of ${(gap * 1e6).toFixed(0)} µm on each side should just bind.`,
    'Hang chain or gears with the crank at top dead centre and the mark of the disc at the mark of the front plate; take up the slack in the running direction.',
    `Bolt the back plate to the engine with the timing slots ${advance === 0 ? 'in the middle' : `${degrees(advance)} from the middle, against the turning of the disc`}.`,
    'Turn forwards until a breath of air at low pressure says that the admission opens, and read the wheel. Turn the stack on its slots until it is the angle of the table.',
    'Check cut-off, release and compression. They move together: if one alone is off, its slot is, and no setting mends that.',
    `The slots give ${degrees((slots * plates.adjustment) / 2)} of the crank either way; a tooth of the chain gives the rest.`,
    'Turn it over by hand through two full turns before the air is put on.',
  ];
}

function make(disc: RotaryDisc, { context, deadCentre }: Order): Made {
  const plan = planDisc(disc, context);
  const complaints = discPlanComplaints(plan);
  if (complaints.length > 0) return { parts: [], adjustment: [], complaints };
  return {
    parts: [discDrawing(plan, deadCentre), frontPlate(plan, deadCentre), backPlate(plan), spacer(plan)],
    adjustment: adjustment(disc),
    complaints: [],
  };
}

export const rotaryDiscCraft = craftOf(rotaryDisc, rotaryDiscParameters, make);
