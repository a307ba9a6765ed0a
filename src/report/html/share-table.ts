/** The table under a bar of shares: what each part is, its share, and how much that is. */
import { shareText } from '../../verdict/figures.ts';
import { shareSwatch, type Share } from '../svg/share-bar.ts';
import { html, type Content, type Markup } from './markup.ts';

export interface ShareTable {
  /** Of the bar; its hatchings are used again. */
  readonly id: string;
  readonly heading: string;
  readonly shares: readonly Share[];
  readonly amount: (share: number) => string;
  /** What all parts are of. */
  readonly whole: string;
  /** Rows between the parts and the whole. */
  readonly further?: Content;
}

export function shareTable({ id, heading, shares, amount, whole, further }: ShareTable): Markup {
  return html`<table>
    <thead>
      <tr>
        <th scope="col">${heading}</th>
        <th scope="col">Share</th>
        <th scope="col">Amount</th>
      </tr>
    </thead>
    <tbody>
      ${shares.map(({ label, share, filling }) =>
        row(html`${shareSwatch(id, filling)} ${label}`, share, amount),
      )}
      ${further}
      <tr class="total">
        <th scope="row">${whole}</th>
        <td>${shareText(1)}</td>
        <td>${amount(1)}</td>
      </tr>
    </tbody>
  </table>`;
}

const row = (heading: Markup, share: number, amount: (share: number) => string): Markup =>
  html`<tr>
    <th scope="row">${heading}</th>
    <td>${shareText(share)}</td>
    <td>${amount(share)}</td>
  </tr> `;
