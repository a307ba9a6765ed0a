/** Where the energy went: what the air of a turn could do at most, and what became of it. */
import type { EngineFacts, SettledCycle } from '../../run/result.ts';
import { availableWork } from '../../verdict/cycle-reading.ts';
import { shareText, workText } from '../../verdict/figures.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { shareTable } from '../html/share-table.ts';
import { shareBar, type Share } from '../svg/share-bar.ts';
import type { Section } from './section.ts';

const ID = 'energy-shares';

export const energySection: Section = {
  id: 'energy',
  heading: 'Where the energy went',
  content: ({ settled, engine }) =>
    settled === undefined || settled.work.load < 0 || settled.work.indicated <= 0
      ? undefined
      : { body: energyFigure(settled, engine) },
};

function energyFigure(cycle: SettledCycle, engine: EngineFacts): Markup {
  const most = availableWork(cycle, engine);
  const shares = energyShares(cycle, most);
  const reached = shares[0]?.share ?? NaN;
  return html`<figure>
    <figcaption>
      ${prose(`The air of a turn could do ${workText(most)} at most; ${shareText(reached)} of that reaches the load`)}
    </figcaption>
    ${shareBar(ID, shares, 'What the air of one turn could do')}
    ${shareTable({
      id: ID,
      heading: 'Energy of one turn',
      shares,
      amount: (share) => workText(share * most),
      whole: 'what the air could do',
    })}
    <p class="note">
      At most: if it expanded slowly down to the room and took its heat from there, m·R·T₀·ln(p/p₀). No engine
      does that; one that expands without heat does less. Air that leaks late in the stroke has done some of
      its work before, so its loss is counted only as far as something is left to lose.
    </p>
  </figure>`;
}

function energyShares({ work, air }: SettledCycle, most: number): Share[] {
  const load = work.load / most;
  const friction = (work.piston + work.bearings + work.valveGear) / most;
  const left = Math.max(0, 1 - load - friction);
  const escaped = Math.min(left, air.leakShare + air.blowThroughShare);
  return [
    { label: 'into the load', share: load, filling: 'useful' },
    { label: 'friction of the engine', share: friction, filling: 'lost-b' },
    { label: 'with air that leaked or blew through', share: escaped, filling: 'lost-a' },
    {
      label: 'throttled, let out under pressure, or expanded cold',
      share: left - escaped,
      filling: 'lost-c',
    },
  ];
}
