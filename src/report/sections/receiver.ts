/** What the receiver goes through in half an hour, for an engine with a compressor. */
import { reportFileNames } from '../file-names.ts';
import { html } from '../html/markup.ts';
import { receiverContent } from '../pictures/receiver.ts';
import type { Section } from './section.ts';

export const receiverSection: Section = {
  id: 'receiver',
  heading: 'Half an hour from a full receiver',
  content: ({ supplyTrace, engine }) => {
    if (supplyTrace === undefined || supplyTrace.time.length < 2) return undefined;
    const { body, charts } = receiverContent({
      ...supplyTrace,
      atmosphericPressure: engine.atmosphericPressure,
    });
    return {
      body: html`${body}
        <p class="note">
          Every moment is in ${reportFileNames.supply}; for other times, and for what would suffice, see
          tickover supply.
        </p>`,
      ...(charts ? { charts } : {}),
    };
  },
};
