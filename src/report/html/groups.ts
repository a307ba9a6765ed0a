/** Figures in named groups, each a small table; side by side where there is room. */
import { prose } from './prose.ts';
import { html, type Markup } from './markup.ts';

export interface Group {
  readonly name: string;
  readonly entries: readonly (readonly [label: string, value: string])[];
}

export function groupTables(groups: readonly Group[]): Markup {
  return html`<div class="groups">
    ${groups.filter(({ entries }) => entries.length > 0).map(groupTable)}
  </div>`;
}

function groupTable({ name, entries }: Group): Markup {
  const rows = entries.map(
    ([label, value]) =>
      html`<tr>
        <th scope="row">${label}</th>
        <td>${prose(value)}</td>
      </tr>`,
  );
  return html`<table>
    <caption>
      ${name}
    </caption>
    <tbody>
      ${rows}
    </tbody>
  </table>`;
}
