/**
 * The shell of a report: one file that asks for nothing else. Its content security policy names the one script and the
 * one style sheet by their hashes and forbids all the rest, so that a text which slipped through could still do nothing.
 */
import { escaped, inertJson, type Markup } from './markup.ts';

/** A text that is pasted into the page, with the SHA-256 of its UTF-8 bytes in Base64. */
export interface InlineAsset {
  readonly text: string;
  readonly sha256: string;
}

/** Script and style sheet of every page: `dist/report/client.js` and `client.css` of the package, read by the caller. */
export interface ReportAssets {
  readonly script: InlineAsset;
  readonly style: InlineAsset;
}

export interface Page {
  readonly title: string;
  readonly body: Markup;
  /** For the script; see `client/main.ts`. */
  readonly data: unknown;
}

export function pageText({ title, body, data }: Page, { script, style }: ReportAssets): string {
  const policy =
    `default-src 'none'; script-src 'sha256-${script.sha256}'; style-src 'sha256-${style.sha256}'; ` +
    "base-uri 'none'; form-action 'none'";
  return [
    '<!doctype html>',
    '<html lang="en-GB">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    '<meta name="color-scheme" content="light dark">',
    `<title>${escaped(title)}</title>`,
    `<style>${verbatim(style.text, '</style')}</style>`,
    '</head>',
    '<body>',
    body.text,
    `<script type="application/json" id="report-data">${inertJson(data)}</script>`,
    `<script>${verbatim(script.text, '</script')}</script>`,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function verbatim(text: string, forbidden: string): string {
  if (text.toLowerCase().includes(forbidden))
    throw new Error(`an asset of the report contains "${forbidden}"`);
  return text;
}
