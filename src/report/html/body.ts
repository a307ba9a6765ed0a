/** What every page of ours has in common: who made it, its name, its sections, and the words at its foot. */
import type { Chart } from '../charts/chart.ts';
import { html, type Content, type Markup } from './markup.ts';

export interface ShownSection {
  readonly id: string;
  readonly heading: string | Markup;
  readonly body: Markup;
  /** Charts that the body has placeholders for. */
  readonly charts?: readonly Chart[];
}

export interface Sheet {
  /** What kind of page it is: "report of one run". */
  readonly kind: string;
  readonly title: string;
  readonly notes?: string;
  readonly sections: readonly ShownSection[];
  /** Of the numbers behind the lines, for those who read without scripts. */
  readonly files: string;
}

export function sheetBody({ kind, title, notes, sections, files }: Sheet): Markup {
  return html`<header>
      <p class="maker">tickover · ${kind}</p>
      <h1><bdi>${title}</bdi></h1>
      ${notesOf(notes)}
    </header>
    <main>
      <noscript
        ><p class="noscript">
          Lines over the crank angle and over time are drawn by the script inside this file, which is switched
          off here. Everything else is complete, and ${files} beside this page hold the same numbers.
        </p></noscript
      >
      ${sections.map(sectionMarkup)}
    </main>
    <footer>
      <p>
        Crank angles are counted from top dead centre in the running direction. Pressures say gauge or
        absolute. The figures come from a calculation, not from a measurement; the engine on the bench has the
        last word.
      </p>
    </footer>`;
}

const notesOf = (notes: string | undefined): Content =>
  notes === undefined || notes === '' ? undefined : html`<p class="notes"><bdi>${notes}</bdi></p>`;

function sectionMarkup({ id, heading, body }: ShownSection): Markup {
  return html`<section id="${id}" aria-labelledby="${id}-heading">
    <h2 id="${id}-heading">${heading}</h2>
    <div class="content">${body}</div>
  </section> `;
}
