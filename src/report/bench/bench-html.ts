/** The finding of a bench test as one HTML file, in the shell of the report of a run. */
import type { BenchCaution, Estimate, Finding, FindingTable } from '../../measure/finding.ts';
import { wideTable } from '../html/data-table.ts';
import { html, type Markup } from '../html/markup.ts';
import { pageText, type ReportAssets } from '../html/page.ts';
import { prose } from '../html/prose.ts';
import { estimateRow } from './estimates.ts';
import { pictureFigures } from './pictures.ts';

/** What was tested, and what was found. */
export interface TitledFinding {
  readonly title: string;
  readonly notes: string;
  /** Kind of the test. */
  readonly test: string;
  readonly finding: Finding;
}

/** The page as text. */
export function benchHtml({ title, notes, test, finding }: TitledFinding, assets: ReportAssets): string {
  const pictures = pictureFigures(finding.pictures);
  const sections: readonly (BenchSection | undefined)[] = [
    { id: 'answer', heading: 'Answer', body: answer(finding) },
    { id: 'cautions', heading: 'Before the next test', body: cautionList(finding.cautions) },
    finding.pictures.length === 0
      ? undefined
      : { id: 'pictures', heading: 'Pictures', body: html`${pictures.map(({ body }) => body)}` },
    finding.estimates.length === 0
      ? undefined
      : { id: 'numbers', heading: 'Numbers', body: estimateTable(finding.estimates) },
    finding.scenario === ''
      ? undefined
      : { id: 'scenario', heading: 'For the scenario', body: scenarioLines(finding.scenario) },
    ...(finding.tables ?? []).map((table, i) => ({
      id: `table-${i + 1}`,
      heading: table.caption,
      body: openTable(table),
    })),
    pictures.length === 0
      ? undefined
      : { id: 'readings', heading: 'Behind the pictures', body: html`${pictures.map(({ table }) => table)}` },
  ];
  return pageText(
    {
      title: `${title} – tickover bench`,
      body: html`<header>
          <p class="maker">tickover · ${test}</p>
          <h1><bdi>${title}</bdi></h1>
          ${notes === '' ? undefined : html`<p class="notes"><bdi>${notes}</bdi></p>`}
        </header>
        <main>
          <noscript
            ><p class="noscript">
              Curves are drawn by the script inside this file, which is switched off here. Everything else is
              complete.
            </p></noscript
          >
          ${sections.map((own) => own && sectionMarkup(own))}
        </main>
        <footer>
          <p>
            Ranges are 95 % intervals. They hold what the readings tell, not what was misread: a wrong volume
            or a leaking hose stays wrong however many readings were taken. What the model says is a
            calculation; the engine on the bench has the last word.
          </p>
        </footer>`,
      data: { charts: pictures.map(({ chart }) => chart) },
    },
    assets,
  );
}

interface BenchSection {
  readonly id: string;
  readonly heading: string;
  readonly body: Markup;
}

const sectionMarkup = ({ id, heading, body }: BenchSection): Markup =>
  html`<section id="${id}" aria-labelledby="${id}-heading">
    <h2 id="${id}-heading">${heading}</h2>
    <div class="content">${body}</div>
  </section> `;

const answer = ({ usable, headline, warnings, statements, next }: Finding): Markup =>
  html`<p class="headline" data-runs="${usable ? 'yes' : 'no'}">${prose(headline)}</p>
    ${warnings.map((warning) => html`<p class="next"><strong>Mind.</strong> ${prose(warning)}</p>`)}
    <p class="next"><strong>To do next.</strong> ${prose(next)}</p>
    <ul class="statements">
      ${statements.map((statement) => html`<li>${prose(statement)}</li>`)}
    </ul>`;

const severityWords = { note: 'Note', caution: 'Caution', danger: 'Danger' } as const;

const cautionList = (cautions: readonly BenchCaution[]): Markup =>
  html`<ul class="cautions">
    ${cautions.map(
      ({ topic, text, severity }) =>
        html`<li data-severity="${severity}">
          <h3>${topic} <span class="severity">${severityWords[severity]}</span></h3>
          <p>${prose(text)}</p>
        </li>`,
    )}
  </ul>`;

const estimateTable = (estimates: readonly Estimate[]): Markup =>
  openTable({
    caption: 'Numbers',
    head: ['Quantity', 'Value', 'From', 'To'],
    rows: estimates.map(estimateRow),
  });

/** Sentences are wrapped, figures are not. */
const isWordy = (rows: FindingTable['rows']): boolean => rows.flat().some(({ length }) => length > 24);

const openTable = ({ caption, head, rows }: FindingTable): Markup =>
  html`<div class="${isWordy(rows) ? 'words' : ''}">${wideTable(`Table: ${caption}`, { head, rows })}</div>`;

const scenarioLines = (lines: string): Markup =>
  html`<p>
      What came of it, for the scenario; a path such as leaks.0.clearance leads from the top of the file
      inwards:
    </p>
    <pre class="lines" role="region" aria-label="Lines for the scenario" tabindex="0">${lines}</pre>`;
