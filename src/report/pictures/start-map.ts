/** From which places of the crank the engine starts, and where it wants a push: a ring on the crank circle. */
import type { StartMap, StartPosition } from '../../run/drive-result.ts';
import { angleText, degrees, secondsText, shareText, speedText } from '../../verdict/figures.ts';
import { plainTable } from '../html/data-table.ts';
import { html, svg, type Content, type Markup } from '../html/markup.ts';
import { prose } from '../html/prose.ts';
import { crankCircle, type CircleArc, type CircleBar } from '../svg/crank-circle.ts';

type Fate = 'alone' | 'pushed' | 'never';

const words: Readonly<Record<Fate, string>> = {
  alone: 'starts by itself',
  pushed: 'wants a push',
  never: 'does not start',
};

const RADIUS = 84;
/** Longest bar of a push [px]. */
const LONGEST_BAR = 36;
const TURN = 2 * Math.PI;

/** Neighbouring places with one fate. */
interface Stretch {
  readonly from: number;
  readonly length: number;
  readonly fate: Fate;
  readonly positions: readonly StartPosition[];
}

/** Each place speaks for the crank half way to its neighbours. */
export function startMapFigure({ positions, unaidedShare }: StartMap): Markup {
  const stretches = stretchesOf(positions);
  const fates = (Object.keys(words) as Fate[]).filter((fate) => stretches.some((own) => own.fate === fate));
  const step = TURN / positions.length;
  return html`<figure>
    <figcaption>${prose(titleOf(stretches, unaidedShare))}</figcaption>
    <div class="beside">
      ${crankCircle({
        arcs: stretches.map(({ from, length, fate }): CircleArc => ({
          from,
          length,
          radius: RADIUS,
          ink: `start-${fate}`,
        })),
        bars: barsOf(positions),
        labels: [],
        alternative: `The crank circle by where the crank stands when the air is turned on. ${stretches.map(stretchText).join('; ')}.`,
      })}
      <div>
        <ul class="key">
          ${fates.map((fate) => html`<li>${swatch(fate)}${words[fate]}</li>`)}
        </ul>
        ${plainTable({
          head: ['Crank from', 'to', 'The engine', 'Push'],
          rows: stretches.map(({ from, length, fate, positions: own }) => [
            borderText(from),
            borderText(from + length),
            words[fate],
            pushRange(own),
          ]),
        })}
        <p class="note">
          Tried every ${angleText(step)}; borders are known to half of that.
          ${
            fates.includes('pushed')
              ? 'A push is the speed given to the flywheel by hand with the air on; the bars outside the ring grow with it.'
              : undefined
          }
          ${slowest(positions)}
        </p>
      </div>
    </div>
  </figure>`;
}

const fateOf = ({ startsUnaided, push }: StartPosition): Fate => {
  if (startsUnaided) return 'alone';
  return push === undefined ? 'never' : 'pushed';
};

function titleOf(stretches: readonly Stretch[], unaidedShare: number): string {
  const longest = largest(
    stretches.filter(({ fate }) => fate === 'alone'),
    ({ length }) => length,
  );
  if (unaidedShare === 1) return 'It starts by itself from every place of the crank';
  if (longest !== undefined)
    return `It starts by itself from ${shareText(unaidedShare)} of the turn; set the crank between ${borderText(longest.from)} and ${borderText(longest.from + longest.length)}`;
  const easiest = largest(
    stretches.flatMap(({ positions }) => positions).filter(({ push }) => push !== undefined),
    ({ push }) => -(push ?? Infinity),
  );
  return easiest?.push === undefined
    ? 'It starts from no place of the crank, pushed or not'
    : `It starts by itself from nowhere; the easiest push is ${speedText(easiest.push)}, from ${angleText(easiest.crankAngle)}`;
}

function largest<T>(items: readonly T[], size: (item: T) => number): T | undefined {
  return items.reduce<T | undefined>(
    (best, own) => (best === undefined || size(own) > size(best) ? own : best),
    undefined,
  );
}

function pushRange(positions: readonly StartPosition[]): string {
  const pushes = positions.flatMap(({ push }) => (push === undefined || push === 0 ? [] : [push]));
  if (pushes.length === 0) return '–';
  const [least, most] = [speedText(Math.min(...pushes)), speedText(Math.max(...pushes))];
  return least === most ? least : `${least} to ${most}`;
}

function slowest(positions: readonly StartPosition[]): Content {
  const times = positions.flatMap(({ startsUnaided, secondsToSpeed: time }) =>
    startsUnaided && time !== undefined && Number.isFinite(time) ? [time] : [],
  );
  if (times.length === 0) return undefined;
  return `By itself it is up to nine tenths of its speed in ${secondsText(Math.min(...times))} to ${secondsText(Math.max(...times))}.`;
}

const stretchText = ({ from, length, fate }: Stretch): string =>
  `from ${borderText(from)} to ${borderText(from + length)} it ${words[fate]}`;

/** Borders lie between whole steps. */
const borderText = (angle: number): string => `${Number(degrees(angle % TURN).toFixed(1))}°`;

const swatch = (fate: Fate): Markup =>
  svg`<svg class="swatch" width="34" height="12" aria-hidden="true"><path class="arc start-${fate}" d="M1 6H33"/></svg>`;

/** Outward from the ring, as long as the push is fast. */
function barsOf(positions: readonly StartPosition[]): CircleBar[] {
  const most = Math.max(...positions.map(({ push }) => push ?? 0));
  return positions.flatMap(({ crankAngle, push }) =>
    push === undefined || push === 0
      ? []
      : [{ angle: crankAngle, from: RADIUS + 9, to: RADIUS + 9 + (LONGEST_BAR * push) / most }],
  );
}

/** Neighbours with one fate become one stretch, also across top dead centre. */
function stretchesOf(positions: readonly StartPosition[]): Stretch[] {
  const [first] = positions;
  if (first === undefined) return [];
  const changes = positions.flatMap((own, i) =>
    fateOf(own) === fateOf(positions.at(i - 1) ?? own) ? [] : [i],
  );
  if (changes.length === 0) return [{ from: 0, length: TURN, fate: fateOf(first), positions }];
  const step = TURN / positions.length;
  return changes.map((begin, k) => {
    const next = changes[k + 1] ?? (changes[0] ?? 0) + positions.length;
    const own = Array.from(
      { length: next - begin },
      (_, i) => positions[(begin + i) % positions.length] ?? first,
    );
    const from = ((((own[0]?.crankAngle ?? 0) - step / 2) % TURN) + TURN) % TURN;
    return { from, length: own.length * step, fate: fateOf(own[0] ?? first), positions: own };
  });
}
