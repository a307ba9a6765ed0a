/** The valve events as a ring on the crank circle: what is open where, and where the crank stands if it does not run. */
import type { EngineFacts, RunResult } from '../../run/result.ts';
import { admissionOpen, exhaustOpen, openTogether, turnedBetween } from '../../verdict/cycle-reading.ts';
import { placeText, severalEnds } from '../../verdict/ends.ts';
import { angleText } from '../../verdict/figures.ts';
import { plainTable } from '../html/data-table.ts';
import { html, svg, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { crankCircle, ringRadii } from '../svg/crank-circle.ts';
import type { Section } from './section.ts';

export const ringSection: Section = {
  id: 'ring',
  heading: 'What is open when',
  content: (result) => ({ body: ringFigure(result) }),
};

function ringFigure(result: RunResult): Markup {
  const { engine } = result;
  const { admission, cutOff, release, compression } = engine.events;
  const openFor = {
    admission: turnedBetween(admission, cutOff),
    exhaust: turnedBetween(release, compression),
  };
  return html`<figure>
    <figcaption>${prose(title(result))}</figcaption>
    <div class="beside">
      ${crankCircle({
        arcs: [
          { from: admission, length: openFor.admission, radius: ringRadii.outer, ink: 'admission' },
          { from: release, length: openFor.exhaust, radius: ringRadii.inner, ink: 'exhaust' },
        ],
        labels: [
          { angle: admission, radius: ringRadii.outer, words: 'admission', below: angleText(admission) },
          { angle: cutOff, radius: ringRadii.outer, words: 'cut-off', below: angleText(cutOff) },
          { angle: release, radius: ringRadii.inner, words: 'release', below: angleText(release) },
          {
            angle: compression,
            radius: ringRadii.inner,
            words: 'compression',
            below: angleText(compression),
          },
        ],
        ...(result.settled === undefined ? { crankAngle: result.outcome.crankAngle } : {}),
        alternative: alternative(engine),
      })}
      <div>
        <ul class="key">
          <li>${swatch('admission')}admission open</li>
          <li>${swatch('exhaust')}exhaust open</li>
        </ul>
        ${table(engine, openFor)}
        <p class="note">
          Top dead centre is above; the engine turns as the arrow
          says.${severalEnds(engine) ? ` The ring is that of ${placeText(engine.ends[0].name)}.` : ''}
        </p>
      </div>
    </div>
  </figure>`;
}

function table(
  { events }: EngineFacts,
  openFor: { readonly admission: number; readonly exhaust: number },
): Markup {
  return plainTable({
    head: ['Port', 'Opens', 'Shuts', 'Open for'],
    rows: [
      ['admission', angleText(events.admission), angleText(events.cutOff), angleText(openFor.admission)],
      ['exhaust', angleText(events.release), angleText(events.compression), angleText(openFor.exhaust)],
      ['both at once', '–', '–', angleText(openTogether(events))],
    ],
  });
}

const swatch = (port: string): Markup =>
  svg`<svg class="swatch" width="34" height="12" aria-hidden="true"><path class="arc ${port}" d="M1 6H33"/></svg>`;

function title({ engine, outcome, settled }: RunResult): string {
  const { events } = engine;
  const inFor = angleText(turnedBetween(events.admission, events.cutOff));
  if (settled !== undefined)
    return `Air is let in for ${inFor} of the turn and let out for ${angleText(turnedBetween(events.release, events.compression))}`;
  const rest = turnedBetween(0, outcome.crankAngle);
  return `The crank is left at ${angleText(rest)}, where ${openAt(engine, rest)}`;
}

function openAt({ events }: EngineFacts, angle: number): string {
  const [air, exhaust] = [admissionOpen(events, angle), exhaustOpen(events, angle)];
  if (air && exhaust) return 'admission and exhaust are open together';
  if (!air && !exhaust) return 'both ports are shut';
  return air ? 'the admission is open' : 'the exhaust is open';
}

function alternative({ events }: EngineFacts): string {
  return (
    `The crank circle with the valve events. Admission open from ${angleText(events.admission)} to ` +
    `${angleText(events.cutOff)}, exhaust open from ${angleText(events.release)} to ${angleText(events.compression)} ` +
    'after top dead centre.'
  );
}
