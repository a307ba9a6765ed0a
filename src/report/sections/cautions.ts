/** What can hurt; shown whether the engine runs or not. */
import type { Caution, Severity } from '../../verdict/cautions/caution.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import type { Section } from './section.ts';

const words: Readonly<Record<Severity, string>> = { note: 'Note', caution: 'Caution', danger: 'Danger' };

export const cautionsSection: Section = {
  id: 'cautions',
  heading: 'Before you turn the air on',
  content: (_result, verdict) => ({
    body: html`<ul class="cautions">
      ${verdict.cautions.map(cautionEntry)}
    </ul>`,
  }),
};

function cautionEntry({ topic, text, severity }: Caution): Markup {
  return html`<li data-severity="${severity}">
    <h3>${topic} <span class="severity">${words[severity]}</span></h3>
    <p>${prose(text)}</p>
  </li> `;
}
