/** The figures of all runs beside each other, and the keys of their scenarios that are not alike. */
import { figure, shareText, speedText } from '../../verdict/figures.ts';
import { verdictOf } from '../../verdict/verdict.ts';
import type { ShownSection } from '../html/body.ts';
import { dataTable, wideTable } from '../html/data-table.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { labelOf, letterOf, type ComparedKey, type ComparedRun, type Comparison } from './comparison.ts';
import { figureRows } from './compared-figures.ts';

export function figuresSection({ runs }: Comparison): ShownSection {
  const run = runs.some(({ result }) => result.settled !== undefined);
  return {
    id: 'figures',
    heading: 'Answer',
    body: html`<p class="headline" data-runs="${run ? 'yes' : 'no'}">${prose(comparedHeadline(runs))}</p>
      <ul class="statements">
        ${runs.map(
          ({ result, name }, i) =>
            html`<li><strong>${letterOf(i)}</strong>, ${name}: ${prose(verdictOf(result).headline)}</li>`,
        )}
      </ul>
      ${wideTable('The figures beside each other', { head: ['', ...runs.map(labelOf)], rows: figureRows(runs) })}
      <p class="note">
        A difference is the work of all the keys that differ together. To learn what one of them does, change
        that one alone.
      </p>`,
  };
}

/** The others against the first that runs. */
function comparedHeadline(runs: readonly ComparedRun[]): string {
  const running = runs.flatMap(({ result: { settled } }, i) =>
    settled === undefined ? [] : [{ letter: letterOf(i), settled }],
  );
  const still = runs.flatMap(({ result }, i) => (result.settled === undefined ? [letterOf(i)] : []));
  const [first, ...others] = running;
  if (first === undefined) return 'None of them runs.';
  const sentences = others.map(({ letter, settled }) => {
    const faster = settled.speed / first.settled.speed - 1;
    const air = settled.airFlowAnr / first.settled.airFlowAnr;
    const pace =
      Math.abs(faster) < 0.005
        ? `as fast as ${first.letter}`
        : `${shareText(Math.abs(faster))} ${faster > 0 ? 'faster' : 'slower'} than ${first.letter}`;
    return `${letter} runs ${pace} on ${figure(air, 2)} times the air.`;
  });
  const alone =
    others.length === 0 ? [`Only ${first.letter} runs, at ${speedText(first.settled.speed)}.`] : [];
  const not = still.length > 0 && others.length > 0 ? [`Not running: ${still.join(', ')}.`] : [];
  return [...sentences, ...alone, ...not].join(' ');
}

export function differencesSection({ runs, differences }: Comparison): ShownSection {
  return {
    id: 'differences',
    heading: 'What was changed',
    body:
      differences.length === 0
        ? html`<p>The scenarios say the same, key by key.</p>`
        : differencesTable(runs, differences),
  };
}

/** More than this would stand in the way of the pictures. */
const OPEN_ROWS = 12;

function differencesTable(runs: readonly ComparedRun[], differences: readonly ComparedKey[]): Markup {
  const table = {
    head: ['Key', ...runs.map(labelOf)],
    rows: differences.map(({ key, values }) => [key, ...values.map((value) => value ?? 'left out')]),
  };
  return differences.length <= OPEN_ROWS
    ? wideTable('Keys that are not given alike', table)
    : dataTable({ ...table, caption: `${differences.length} keys that are not given alike` });
}
