/** What to change next: every step with what it does, the largest effect first. */
import type { Change, NextChanges } from '../../study/next-changes.ts';
import { fixed } from '../../verdict/figures.ts';
import { effectText, nextWords } from '../../verdict/studies/next-words.ts';
import type { ShownSection } from '../html/body.ts';
import { plainTable } from '../html/data-table.ts';
import { html, type Content } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { settingPath } from '../html/setting-path.ts';
import type { ReportAssets } from '../html/page.ts';
import { studyPage, type About } from './study-page.ts';

const SHOWN = 40;

/** Sentences above the table, which holds them all. */
const SAID = 6;

/** The page of what to change next. */
export function nextPage(about: About, found: NextChanges, assets: ReportAssets): string {
  const words = nextWords(found);
  return studyPage(
    {
      about,
      kind: 'what to change next',
      words: { ...words, statements: words.statements.slice(0, SAID) },
      sections: [tableSection(found, words.without)],
      files: 'next.json',
    },
    assets,
  );
}

function tableSection({ changes }: NextChanges, without: readonly string[]): ShownSection {
  return {
    id: 'steps',
    heading: 'Step by step',
    body: html`<div class="scroll paths" role="region" aria-label="Steps" tabindex="0">
        ${plainTable({
          head: ['Setting', 'now', 'step to', 'speed', 'starts from', 'air for its work'],
          rows: changes.slice(0, SHOWN).map(row),
        })}
      </div>
      ${
        without.length === 0
          ? undefined
          : html`<p class="note">A step changes next to nothing at: ${without.join(', ')}.</p>`
      }
      <p class="note">
        A step is about what a builder would try next: a tenth of a size or a pressure, 5° or 5 % of the
        stroke of a timing, the next letter of a fit, the next process of a finish. Each is tried alone.
      </p>`,
  };
}

function row({ setting, to, answer, effect }: Change): Content[] {
  const runs = answer.outcome === 'settled';
  return [
    settingPath(setting.path),
    prose(setting.text),
    prose(to),
    runs ? prose(effectText(effect.speed)) : 'does not run',
    effect.starts === undefined
      ? '–'
      : prose(`${effect.starts > 0 ? '+' : ''}${fixed(100 * effect.starts, 0)} %`),
    effect.airPerWork === undefined || !runs ? '–' : prose(effectText(effect.airPerWork)),
  ];
}
