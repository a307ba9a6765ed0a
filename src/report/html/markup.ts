/** HTML that is escaped by construction: text put into a template is inert, only other markup passes through. */

export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
}

export type Content = string | number | Markup | undefined | readonly Content[];

/** Template tag for HTML and SVG alike. Attribute values in a template must be quoted. */
export function html(parts: TemplateStringsArray, ...contents: Content[]): Markup {
  return new Markup(parts.reduce((text, part, i) => text + rendered(contents[i - 1]) + part));
}

/** The same for drawings, under a name by which the formatter leaves white space alone. */
export function svg(parts: TemplateStringsArray, ...contents: Content[]): Markup {
  return html(parts, ...contents);
}

function rendered(content: Content): string {
  if (content === undefined) return '';
  if (content instanceof Markup) return content.text;
  if (typeof content === 'string' || typeof content === 'number') return escaped(String(content));
  return content.map(rendered).join('');
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

export function escaped(text: string): string {
  return text.replace(/[&<>"']/gu, (character) => entities[character] ?? character);
}

/** JSON for a script element: nothing in it can end the element or open a comment. */
export function inertJson(value: unknown): string {
  return JSON.stringify(value).replace(/[<>&\u2028\u2029]/gu, unicodeEscape);
}

const unicodeEscape = (character: string): string =>
  `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
