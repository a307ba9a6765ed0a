/** Where the work of one turn went. */
import type { WorkLedger } from '../../run/result.ts';
import { shareText, workText } from '../../verdict/figures.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { shareBar, shareSwatch, type Share } from '../svg/share-bar.ts';
import type { Section } from './section.ts';

const ID = 'work-shares';

export const workSection: Section = {
  id: 'work',
  heading: 'Where the work went',
  content: ({ settled }) =>
    settled === undefined || settled.work.indicated <= 0 ? undefined : { body: workFigure(settled.work) },
};

function workFigure(work: WorkLedger): Markup {
  const shares = workShares(work);
  return html`<figure>
    <figcaption>${prose(workTitle(work))}</figcaption>
    ${shareBar(ID, shares, 'The work of one turn')}
    <table>
      <thead>
        <tr>
          <th scope="col">Work of one turn</th>
          <th scope="col">Share</th>
          <th scope="col">Amount</th>
        </tr>
      </thead>
      <tbody>
        ${shares.map(
          ({ label, share, filling }) =>
            html`<tr>
              <th scope="row">${shareSwatch(ID, filling)} ${label}</th>
              <td>${shareText(share)}</td>
              <td>${workText(share * work.indicated)}</td>
            </tr> `,
        )}
        <tr>
          <th scope="row">left in the flywheel</th>
          <td>${shareText(work.kineticGain / work.indicated)}</td>
          <td>${workText(work.kineticGain)}</td>
        </tr>
        <tr class="total">
          <th scope="row">by the air on the piston</th>
          <td>${shareText(1)}</td>
          <td>${workText(work.indicated)}</td>
        </tr>
      </tbody>
    </table>
  </figure>`;
}

const workTitle = ({ load, indicated }: WorkLedger): string =>
  `${shareText(load / indicated)} of the work on the piston reaches the load, ${workText(load)} a turn`;

export function workShares({ load, piston, bearings, valveGear, indicated }: WorkLedger): Share[] {
  return [
    { label: 'load', share: load / indicated, filling: 'useful' },
    { label: 'piston friction', share: piston / indicated, filling: 'lost-a' },
    { label: 'bearings', share: bearings / indicated, filling: 'lost-b' },
    { label: 'valve gear', share: valveGear / indicated, filling: 'lost-c' },
  ];
}
