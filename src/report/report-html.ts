/** A result as one HTML file that works from disk with the network off, on screen and on paper. */
import type { RunResult } from '../run/result.ts';
import { verdictOf } from '../verdict/verdict.ts';
import { html, type Markup } from './html/markup.ts';
import { pageText, type ReportAssets } from './html/page.ts';
import { sections } from './sections/registry.ts';
import type { ReportExtras, SectionContent } from './sections/section.ts';

export function reportHtml(result: RunResult, assets: ReportAssets, extras: ReportExtras = {}): string {
  const verdict = verdictOf(result);
  const shown = sections.flatMap(({ id, heading, content }) => {
    const found = content(result, verdict, extras);
    return found === undefined ? [] : [{ id, heading, ...found }];
  });
  return pageText(
    {
      title: `${result.title} – tickover report`,
      body: body(result, shown),
      data: { charts: shown.flatMap(({ charts }) => charts ?? []) },
    },
    assets,
  );
}

function body({ title, notes }: RunResult, shown: readonly ShownSection[]): Markup {
  return html`<header>
      <p class="maker">tickover · report of one run</p>
      <h1><bdi>${title}</bdi></h1>
      ${notes === '' ? undefined : html`<p class="notes"><bdi>${notes}</bdi></p>`}
    </header>
    <main>
      <noscript
        ><p class="noscript">
          Lines over the crank angle and over time are drawn by the script inside this file, which is switched
          off here. Everything else is complete, and the CSV files beside this report hold the same numbers.
        </p></noscript
      >
      ${shown.map(sectionMarkup)}
    </main>
    <footer>
      <p>
        Crank angles are counted from top dead centre in the running direction. Pressures say gauge or
        absolute. The figures come from a calculation, not from a measurement; the engine on the bench has the
        last word.
      </p>
    </footer>`;
}

type ShownSection = SectionContent & { readonly id: string; readonly heading: string };

function sectionMarkup({ id, heading, body: content }: ShownSection): Markup {
  return html`<section id="${id}" aria-labelledby="${id}-heading">
    <h2 id="${id}-heading">${heading}</h2>
    <div class="content">${content}</div>
  </section> `;
}
