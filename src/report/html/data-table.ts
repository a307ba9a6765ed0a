/** Tables: open ones beside a picture, and the numbers behind a picture, folded away until asked for. */
import { html, type Content, type Markup } from './markup.ts';

export interface Table {
  /** A heading for each column; an empty one over the headings of the rows is no heading. */
  readonly head: readonly Content[];
  /** The first cell of a row is its heading. */
  readonly rows: readonly (readonly Content[])[];
}

export function plainTable({ head, rows }: Table): Markup {
  return html`<table>
    <thead>
      <tr>
        ${head.map((cell) => (cell === '' ? html`<td></td>` : html`<th scope="col">${cell}</th>`))}
      </tr>
    </thead>
    <tbody>
      ${rows.map(tableRow)}
    </tbody>
  </table>`;
}

function tableRow([heading, ...cells]: readonly Content[]): Markup {
  return html`<tr>
    <th scope="row">${heading}</th>
    ${cells.map((cell) => html`<td>${cell}</td>`)}
  </tr> `;
}

/** A table that may be wider than the page: it scrolls by itself, also from the keyboard. */
export function wideTable(label: string, table: Table): Markup {
  return html`<div class="scroll" role="region" aria-label="${label}" tabindex="0">
    ${plainTable(table)}
  </div>`;
}

/** Numbers behind a picture. */
export function dataTable({ caption, ...table }: Table & { readonly caption: string }): Markup {
  return html`<details>
    <summary>${caption}</summary>
    ${wideTable(caption, table)}
  </details>`;
}
