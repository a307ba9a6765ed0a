/** What the engine can drive, and from where it starts. */
import { reportFileNames } from '../file-names.ts';
import { html } from '../html/markup.ts';
import { startMapFigure } from '../pictures/start-map.ts';
import { torqueSpeedContent } from '../pictures/torque-speed.ts';
import type { Section } from './section.ts';

export const torqueSection: Section = {
  id: 'torque',
  heading: 'What it can drive',
  content: ({ drive, settled }) =>
    drive === undefined || drive.curve.speed.length < 2
      ? undefined
      : torqueSpeedContent(drive, settled?.speed),
};

export const startsSection: Section = {
  id: 'starts',
  heading: 'From where it starts',
  content: ({ drive }) =>
    drive === undefined
      ? undefined
      : {
          body: html`${startMapFigure(drive.startMap)}
            ${
              drive.startMapReversed === undefined
                ? ''
                : html`<h3>Set over to run in reverse</h3>
                    <p class="note">Crank angles are counted the way it then turns.</p>
                    ${startMapFigure(drive.startMapReversed)}`
            }
            <p class="note">Place by place in ${reportFileNames.starts}.</p>`,
        },
};
