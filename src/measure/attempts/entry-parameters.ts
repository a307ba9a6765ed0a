/** What every entry of the notebook says. */
import { settings, text } from '../../kinds/describe.ts';

export const entryParameters = {
  what: text(200, 'What this attempt was about.'),
  when: text(40, 'The day, in any form.', ''),
  changed: settings({
    most: 20,
    needed: false,
    example: ['valve_gear.admission.clearance', '8 um'],
    doc: 'Values of the scenario that are different from here on, by their paths.',
  }),
};
