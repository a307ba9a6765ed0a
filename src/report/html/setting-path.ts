/** The path of a setting, one long word, which may go on in the next line behind a dot or an underscore. */
import { html, type Markup } from './markup.ts';

export const settingPath = (path: string): Markup =>
  html`${path.split(/(?<=[._])/u).map((part, i) => (i === 0 ? part : html`<wbr />${part}`))}`;
