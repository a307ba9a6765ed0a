/** The answer first: does it run, what to try next, and the few figures everyone asks for. */
import type { RunResult } from '../../run/result.ts';
import { airText, powerText, shareText, speedText } from '../../verdict/figures.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import type { Section } from './section.ts';

export const answerSection: Section = {
  id: 'answer',
  heading: 'Answer',
  content: (result, verdict) => ({
    body: html`<p class="headline" data-runs="${result.settled === undefined ? 'no' : 'yes'}">
        ${prose(verdict.headline)}
      </p>
      ${keyFigures(result)}
      <p class="next"><strong>To try next.</strong> ${prose(verdict.nextChange)}</p>
      <ul class="statements">
        ${verdict.statements.map((statement) => html`<li>${prose(statement)}</li>`)}
      </ul>`,
  }),
};

function keyFigures({ settled, compressor, engine }: RunResult): Markup | undefined {
  if (settled === undefined) return undefined;
  const figures: [string, string][] = [
    ['Speed', speedText(settled.speed)],
    ['Into the load', powerText(settled.brakePower)],
    ['Air', airText(settled.airFlowAnr, engine.gas)],
    ['Air that does work', shareText(settled.air.workedShare)],
  ];
  if (compressor !== undefined)
    figures.push(['Compressor runs', `${shareText(compressor.duty)} of the time`]);
  return html`<dl class="figures">
    ${figures.map(
      ([name, value]) =>
        html`<div>
          <dt>${name}</dt>
          <dd>${value}</dd>
        </div>`,
    )}
  </dl>`;
}
