/** Where the air of one turn went. */
import type { AirLedger, GasFacts, SettledCycle } from '../../run/result.ts';
import { figure, flowFigure, flowUnit, shareText } from '../../verdict/figures.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { shareBar, shareSwatch, type Share } from '../svg/share-bar.ts';
import type { Section } from './section.ts';

const ID = 'air-shares';

export const airSection: Section = {
  id: 'air',
  heading: 'Where the air went',
  content: ({ settled, engine }) =>
    settled === undefined ? undefined : { body: airFigure(settled, engine.gas) },
};

function airFigure(cycle: SettledCycle, gas: GasFacts): Markup {
  const shares = airShares(cycle.air);
  return html`<figure>
    <figcaption>${prose(airTitle(shares))}</figcaption>
    ${shareBar(ID, shares, 'The air of one turn')}
    <table>
      <thead>
        <tr>
          <th scope="col">Air of one turn</th>
          <th scope="col">Share</th>
          <th scope="col">${flowUnit(gas)}</th>
          <th scope="col">mg a turn</th>
        </tr>
      </thead>
      <tbody>
        ${shares.map((share) => [airRow(cycle, share), share.label === LEAKED ? leakRows(cycle) : ''])}
        ${totalRow(cycle)}
      </tbody>
    </table>
  </figure>`;
}

const LEAKED = 'leaked away';

export function airShares(air: AirLedger): Share[] {
  return [
    { label: 'did work', share: air.workedShare, filling: 'useful' },
    { label: LEAKED, share: air.leakShare, filling: 'lost-a' },
    { label: 'blew straight through', share: air.blowThroughShare, filling: 'lost-b' },
    { label: 'filled the clearance', share: air.clearanceShare, filling: 'rest' },
  ];
}

function airTitle([worked, ...lost]: readonly Share[]): string {
  const worst = lost.reduce<Share | undefined>(
    (a, b) => (a === undefined || b.share > a.share ? b : a),
    undefined,
  );
  const loss =
    worst === undefined ? '' : `; the largest part of the rest ${worst.label}, ${shareText(worst.share)}`;
  return `${shareText(worked?.share ?? NaN)} of the air does work${loss}`;
}

function amounts({ air, airFlowAnr }: SettledCycle, share: number): Markup {
  return html`<td>${shareText(share)}</td>
    <td>${flowFigure(airFlowAnr * share)}</td>
    <td>${figure(air.mass * 1e6 * share)}</td>`;
}

function airRow(cycle: SettledCycle, { label, share, filling }: Share): Markup {
  return html`<tr>
    <th scope="row">${shareSwatch(ID, filling)} ${label}</th>
    ${amounts(cycle, share)}
  </tr> `;
}

function leakRows(cycle: SettledCycle): Markup[] {
  return cycle.air.leaks.map(
    ({ name, share }) =>
      html`<tr class="part">
        <th scope="row">${name}</th>
        ${amounts(cycle, share)}
      </tr> `,
  );
}

const totalRow = (cycle: SettledCycle): Markup =>
  html`<tr class="total">
    <th scope="row">from the supply</th>
    ${amounts(cycle, 1)}
  </tr>`;
