/** From which places of the crank the engine starts: a ring on the crank circle. */
import { angleText, shareText } from '../../verdict/figures.ts';
import { plainTable } from '../html/data-table.ts';
import { html, svg, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { crankCircle, type CircleArc } from '../svg/crank-circle.ts';

/** What becomes of the engine from one place of the crank. */
export type StartFate = 'runs' | 'stops' | 'stays' | 'backwards';

export interface TriedStart {
  /** Crank angle after top dead centre [rad], 0 to 2π. */
  readonly crankAngle: number;
  readonly fate: StartFate;
}

const words: Readonly<Record<StartFate, string>> = {
  runs: 'starts and runs',
  stops: 'moves, then stops',
  stays: 'does not move',
  backwards: 'turns the wrong way',
};

const RADIUS = 92;
const TURN = 2 * Math.PI;

interface Stretch {
  readonly from: number;
  readonly length: number;
  readonly fate: StartFate;
}

/** Places in ascending order; each speaks for the crank half way to its neighbours. */
export function startMapFigure(tried: readonly TriedStart[]): Markup {
  const stretches = stretchesOf(tried);
  const fates = [...new Set(stretches.map(({ fate }) => fate))];
  return html`<figure>
    <figcaption>${prose(title(stretches))}</figcaption>
    <div class="beside">
      ${crankCircle({
        arcs: stretches.map(({ from, length, fate }): CircleArc => ({
          from,
          length,
          radius: RADIUS,
          ink: `fate-${fate}`,
        })),
        labels: [],
        alternative: `The crank circle by where the crank stands when the air is turned on. ${stretches.map(stretchText).join('; ')}.`,
      })}
      <div>
        <ul class="key">
          ${fates.map((fate) => html`<li>${swatch(fate)}${words[fate]}</li>`)}
        </ul>
        ${plainTable({
          head: ['Crank from', 'to', 'The engine'],
          rows: stretches.map(({ from, length, fate }) => [
            angleText(from),
            angleText((from + length) % TURN),
            words[fate],
          ]),
        })}
        <p class="note">
          Tried at ${tried.length} places; borders are known to half a step. Angles after top dead centre in
          the running direction.
        </p>
      </div>
    </div>
  </figure>`;
}

function title(stretches: readonly Stretch[]): string {
  const running = stretches.filter(({ fate }) => fate === 'runs');
  const share = running.reduce((sum, { length }) => sum + length, 0) / TURN;
  const longest = running.reduce<Stretch | undefined>(
    (best, own) => (best === undefined || own.length > best.length ? own : best),
    undefined,
  );
  if (longest === undefined) return 'It starts by itself from no place of the crank that was tried';
  if (share > 0.999) return 'It starts from every place of the crank that was tried';
  return `It starts from ${shareText(share)} of the turn; set the crank between ${angleText(longest.from)} and ${angleText((longest.from + longest.length) % TURN)}`;
}

const stretchText = ({ from, length, fate }: Stretch): string =>
  `from ${angleText(from)} to ${angleText((from + length) % TURN)} it ${words[fate]}`;

const swatch = (fate: StartFate): Markup =>
  svg`<svg class="swatch" width="34" height="12" aria-hidden="true"><path class="arc fate-${fate}" d="M1 6H33"/></svg>`;

/** Neighbouring places with one fate become one stretch, also across top dead centre. */
function stretchesOf(tried: readonly TriedStart[]): Stretch[] {
  const [first] = tried;
  if (first === undefined) return [];
  const begin = tried.findIndex(({ fate }, i) => fate !== tried.at(i - 1)?.fate);
  if (begin < 0) return [{ from: 0, length: TURN, fate: first.fate }];
  const inOrder = [...tried.slice(begin), ...tried.slice(0, begin)];
  const border = (i: number): number => {
    const [before, after] = [inOrder.at(i - 1), inOrder[i % inOrder.length]].map(
      (own) => own?.crankAngle ?? NaN,
    );
    const step = (((after ?? NaN) - (before ?? NaN)) % TURN) + TURN;
    return ((before ?? NaN) + (step % TURN) / 2) % TURN;
  };
  const borders = inOrder.flatMap(({ fate }, i) => (fate === inOrder.at(i - 1)?.fate ? [] : [i]));
  return borders.map((i, k) => {
    const from = border(i);
    const length = (border(borders[k + 1] ?? inOrder.length) - from + TURN) % TURN;
    return { from, length, fate: inOrder[i]?.fate ?? first.fate };
  });
}
