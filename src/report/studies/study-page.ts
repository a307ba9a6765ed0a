/** The page of a study: its answer in words, then what is behind it. */
import type { StudyWords } from '../../verdict/studies/study-words.ts';
import { sheetBody, type ShownSection } from '../html/body.ts';
import { html, type Markup } from '../html/markup.ts';
import { pageText, type ReportAssets } from '../html/page.ts';
import { prose } from '../html/prose.ts';

/** What a study is called. */
export interface About {
  readonly title: string;
  readonly notes: string;
}

export interface StudyPage {
  readonly about: About;
  /** "limit of one setting" */
  readonly kind: string;
  readonly words: StudyWords;
  readonly sections: readonly ShownSection[];
  /** Files with the numbers. */
  readonly files: string;
}

export function studyPage({ about, kind, words, sections, files }: StudyPage, assets: ReportAssets): string {
  const shown = [answerSection(words), ...sections];
  return pageText(
    {
      title: `${about.title} – tickover ${kind}`,
      body: sheetBody({ kind, ...about, sections: shown, files }),
      data: { charts: shown.flatMap(({ charts }) => charts ?? []) },
    },
    assets,
  );
}

const beforeYouCut =
  'Whatever you change, run the engine with it (tickover run with --set) and read its cautions before you cut metal or ' +
  'turn on the air.';

function answerSection({ headline, good, statements, figures }: StudyWords): ShownSection {
  return {
    id: 'answer',
    heading: 'Answer',
    body: html`<p class="headline" data-runs="${good ? 'yes' : 'no'}">${prose(headline)}</p>
      ${figures.length === 0 ? undefined : figureList(figures)}
      <ul class="statements">
        ${[...statements, beforeYouCut].map((statement) => html`<li>${prose(statement)}</li>`)}
      </ul>`,
  };
}

function figureList(figures: StudyWords['figures']): Markup {
  return html`<dl class="figures">
    ${figures.map(
      ([name, value]) =>
        html`<div>
          <dt>${name.charAt(0).toUpperCase() + name.slice(1)}</dt>
          <dd>${value}</dd>
        </div>`,
    )}
  </dl>`;
}
