/** Where the work of one turn went. */
import type { WorkLedger } from '../../run/result.ts';
import { shareText, workText } from '../../verdict/figures.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { shareTable } from '../html/share-table.ts';
import { shareBar, type Share } from '../svg/share-bar.ts';
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
  const kept = noiseFree(work.kineticGain, work.indicated);
  return html`<figure>
    <figcaption>${prose(workTitle(work))}</figcaption>
    ${shareBar(ID, shares, 'The work of one turn')}
    ${shareTable({
      id: ID,
      heading: 'Work of one turn',
      shares,
      amount: (share) => workText(share * work.indicated),
      whole: 'by the air on the piston',
      further: html`<tr>
        <th scope="row">left in the flywheel</th>
        <td>${shareText(kept / work.indicated)}</td>
        <td>${workText(kept)}</td>
      </tr>`,
    })}
  </figure>`;
}

/** A remainder of the arithmetic counts as none. */
const noiseFree = (amount: number, whole: number): number => (Math.abs(amount) < 1e-4 * whole ? 0 : amount);

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
