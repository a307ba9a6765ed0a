/** The indicator diagram and its four events. */
import { columnUnit } from '../../quantity/format.ts';
import type { EngineFacts, SettledCycle } from '../../run/result.ts';
import { lossFreeWork, releasePressure } from '../../verdict/cycle-reading.ts';
import {
  angleText,
  barText,
  figure,
  fixed,
  gaugeText,
  pressureText,
  shareText,
  workText,
} from '../../verdict/figures.ts';
import { placeText } from '../../verdict/ends.ts';
import { reportFileNames } from '../file-names.ts';
import { html, svg, type Content, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { eventPoints, indicatorDiagram } from '../svg/indicator-diagram.ts';
import type { Section } from './section.ts';

export const indicatorSection: Section = {
  id: 'indicator',
  heading: 'Work of one turn',
  content: ({ settled, engine }) =>
    settled === undefined ? undefined : { body: indicator(settled, engine) },
};

function indicator(cycle: SettledCycle, engine: EngineFacts): Markup {
  const volumes = columnUnit('volume');
  const pressures = columnUnit('pressure difference');
  return html`<figure>
    <figcaption>${prose(title(cycle, engine))}</figcaption>
    <div class="beside">
      ${indicatorDiagram(cycle, engine, alternative(cycle, engine))}
      <div>
        <table>
          <caption>
            The four events${ofFirstEnd(cycle)}
          </caption>
          <thead>
            <tr>
              <th scope="col">Event</th>
              <th scope="col">Crank</th>
              <th scope="col">Volume [${volumes.label}]</th>
              <th scope="col">Pressure [${pressures.label} gauge]</th>
            </tr>
          </thead>
          <tbody>
            ${eventPoints(cycle).map(
              ({ name, angle, volume, pressure }) =>
                html`<tr>
                  <th scope="row">${name}</th>
                  <td>${angleText(angle)}</td>
                  <td>${figure(volumes.of(volume))}</td>
                  <td>${fixed(pressures.of(pressure - engine.atmosphericPressure), pressures.decimals)}</td>
                </tr>`,
            )}
          </tbody>
        </table>
        ${keyToEnds(cycle)}
        <p class="note">
          Grey and dashed: the same cut-off without losses, that is supply pressure up to cut-off, expansion
          p·V<sup>${figure(engine.gas.heatCapacityRatio)}</sup> = const to the end of the stroke, exhaust at
          the pressure of the room. The area of a diagram is work. Every point is in ${reportFileNames.cycle}.
        </p>
      </div>
    </div>
  </figure>`;
}

const severalEnds = ({ profile }: SettledCycle): boolean => profile.ends.length > 1;

const ofFirstEnd = (cycle: SettledCycle): string =>
  severalEnds(cycle) ? ` of ${placeText(cycle.profile.ends[0].name)}` : '';

/** Which line is whose, when there is a choice. */
function keyToEnds(cycle: SettledCycle): Content {
  if (!severalEnds(cycle)) return undefined;
  const [first, ...others] = cycle.profile.ends;
  return html`<ul class="key">
    <li>${swatch('first')}${first.name}</li>
    <li>${swatch('further')}${others.map(({ name }) => name).join('; ')}</li>
  </ul>`;
}

const swatch = (line: string): Markup =>
  svg`<svg class="swatch" width="34" height="10" aria-hidden="true"><path class="${line}" d="M1 5H33"/></svg>`;

function title({ work, cutOffFraction }: SettledCycle, engine: EngineFacts): string {
  const ideal = lossFreeWork(engine);
  const share =
    ideal > 0 ? `, ${shareText(work.indicated / ideal)} of what a loss-free engine would make of it` : '';
  return `Cut off at ${shareText(cutOffFraction)} of the stroke, the air does ${workText(work.indicated)} a turn${share}`;
}

function alternative(cycle: SettledCycle, engine: EngineFacts): string {
  const { ends } = cycle.profile;
  const highest = ends.flatMap(({ pressure }) => Array.from(pressure)).reduce((a, b) => Math.max(a, b));
  const whose = severalEnds(cycle) ? `, of ${ends.length} working ends` : '';
  return (
    `Indicator diagram, cylinder pressure against volume${whose}. The admission shuts at ${shareText(cycle.cutOffFraction)} of the ` +
    `stroke; the exhaust opens with the air at ${gaugeText(releasePressure(cycle), engine.atmosphericPressure)}; the supply ` +
    `stands ${barText(engine.supplyPressure - engine.atmosphericPressure)} above the room. The highest pressure is ${pressureText(highest, engine.atmosphericPressure)}.`
  );
}
