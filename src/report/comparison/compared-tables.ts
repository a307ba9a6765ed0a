/** The figures of all runs beside each other, and the keys of their scenarios that are not alike. */
import { verdictOf } from '../../verdict/verdict.ts';
import type { ShownSection } from '../html/body.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { labelOf, letterOf, type ComparedRun, type Comparison } from './comparison.ts';
import { figureRows } from './compared-figures.ts';

export function figuresSection({ runs }: Comparison): ShownSection {
  return {
    id: 'figures',
    heading: 'Answer',
    body: html`<ul class="statements">
        ${runs.map(
          ({ result, name }, i) =>
            html`<li><strong>${letterOf(i)}</strong>, ${name}: ${prose(verdictOf(result).headline)}</li>`,
        )}
      </ul>
      ${wideTable('The figures beside each other', ['', ...runs.map(labelOf)], figureRows(runs))}
      <p class="note">
        Each difference below is the work of all the keys that differ together. To learn what one of them
        does, change that one alone.
      </p>`,
  };
}

export function differencesSection({ runs, differences }: Comparison): ShownSection {
  return {
    id: 'differences',
    heading: 'What was changed',
    body:
      differences.length === 0
        ? html`<p>The scenarios say the same, key by key.</p>`
        : wideTable(
            'Keys that are not given alike',
            ['Key', ...runs.map((run: ComparedRun, i) => labelOf(run, i))],
            differences.map(({ key, values }) => [key, ...values.map((value) => value ?? 'left out')]),
          ),
  };
}

function wideTable(label: string, head: readonly string[], rows: readonly (readonly string[])[]): Markup {
  return html`<div class="scroll" role="region" aria-label="${label}" tabindex="0">
    <table>
      <thead>
        <tr>
          ${head.map((cell, i) => (i === 0 && cell === '' ? html`<td></td>` : html`<th scope="col">${cell}</th>`))}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ([name, ...cells]) =>
            html`<tr>
              <th scope="row">${name}</th>
              ${cells.map((cell) => html`<td>${cell}</td>`)}
            </tr> `,
        )}
      </tbody>
    </table>
  </div>`;
}
