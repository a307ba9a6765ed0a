/** Where air and work went, a bar for each run under the other. */
import { shareText } from '../../verdict/figures.ts';
import { airShares } from '../sections/air.ts';
import { workShares } from '../sections/work.ts';
import type { ShownSection } from '../html/body.ts';
import { wideTable } from '../html/data-table.ts';
import { html, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { shareBar, shareSwatch, type Share } from '../svg/share-bar.ts';
import { labelOf, type ComparedRun, type Comparison } from './comparison.ts';

interface SharedRun {
  readonly label: string;
  readonly shares: readonly Share[];
}

export function airSharesSection({ runs }: Comparison): ShownSection | undefined {
  const shared = sharedRuns(runs, ({ result }) =>
    result.settled === undefined ? undefined : airShares(result.settled.air),
  );
  return section('air', 'Where the air went', 'Of the air of a turn, does work', shared);
}

export function workSharesSection({ runs }: Comparison): ShownSection | undefined {
  const shared = sharedRuns(runs, ({ result }) =>
    result.settled === undefined || result.settled.work.indicated <= 0
      ? undefined
      : workShares(result.settled.work),
  );
  return section('work', 'Where the work went', 'Of the work on the piston, reaches the load', shared);
}

function sharedRuns(
  runs: readonly ComparedRun[],
  sharesOf: (run: ComparedRun) => readonly Share[] | undefined,
): SharedRun[] {
  return runs.flatMap((run, i) => {
    const shares = sharesOf(run);
    return shares === undefined ? [] : [{ label: labelOf(run, i), shares }];
  });
}

function section(
  id: string,
  heading: string,
  what: string,
  shared: readonly SharedRun[],
): ShownSection | undefined {
  const [first] = shared;
  if (first === undefined) return undefined;
  const useful = shared.map(
    ({ label, shares }) => `${label.charAt(0)} ${shareText(shares[0]?.share ?? NaN)}`,
  );
  return {
    id,
    heading,
    body: html`<figure>
      <figcaption>${prose(`${what}: ${useful.join(', ')}`)}</figcaption>
      ${shared.map(
        ({ label, shares }, i) =>
          html`<p class="bar-name">${label}</p>
            ${shareBar(`${id}-${i}`, shares, label)}`,
      )}
      ${table(id, heading, shared, first.shares)}
    </figure>`,
  };
}

function table(id: string, heading: string, shared: readonly SharedRun[], names: readonly Share[]): Markup {
  return wideTable(`${heading}: the shares`, {
    head: ['', ...shared.map(({ label }) => label)],
    rows: names.map(({ label, filling }, row) => [
      html`${shareSwatch(`${id}-0`, filling)} ${label}`,
      ...shared.map(({ shares }) => shareText(shares[row]?.share ?? NaN)),
    ]),
  });
}
