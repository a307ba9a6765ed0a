/** What there is to make for this engine's valve gear, at a glance. */
import type { WorkshopPreview } from '../../workshop/preview.ts';
import { html, Markup } from '../html/markup.ts';
import type { Section } from './section.ts';

export const workshopSection: Section = {
  id: 'workshop',
  heading: 'Parts to make',
  content: (_result, _verdict, { workshop }) => {
    if (workshop === undefined || workshop.parts.length + workshop.obstacles.length === 0) return undefined;
    return { body: workshop.obstacles.length > 0 ? obstacles(workshop) : pictures(workshop) };
  },
};

function obstacles({ obstacles: found }: WorkshopPreview): Markup {
  return html`<p>The valve gear cannot be drawn as it stands; the run above does not depend on that.</p>
    <ul>
      ${found.map((obstacle) => html`<li>${obstacle}</li>`)}
    </ul>`;
}

function pictures({ parts }: WorkshopPreview): Markup {
  return html`<div class="parts">
      ${parts.map(
        // Markup of our own, escaped where it was drawn.
        ({ name, svg }) =>
          html`<figure>
            ${new Markup(svg)}
            <figcaption>${name}</figcaption>
          </figure> `,
      )}
    </div>
    <p class="note">
      Not to one scale. The command <code>tickover draw</code> writes them for the cutter (DXF and SVG at full
      size) and for the bench (sheets that print 1 : 1, with dimensions, fits and a sheet to set the engine
      by).
    </p>`;
}
