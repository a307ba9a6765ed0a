/** Shares between 0 and 1 as bars, each with the interval it is known to. */
import { shareText } from '../../verdict/figures.ts';
import { svg, type Markup } from '../html/markup.ts';
import { coordinate } from './scale.ts';

export interface ChanceBar {
  readonly label: string;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

const WIDTH = 560;
const ROW = 46;
const [LEFT, RIGHT] = [4, WIDTH - 64] as const;

export function chanceBars(bars: readonly ChanceBar[], name: string): Markup {
  const height = bars.length * ROW + 22;
  const alternative = `${name}: ${bars.map(({ label, share }) => `${label} ${shareText(share)}`).join(', ')}.`;
  const ticks = [0, 0.25, 0.5, 0.75, 1].map(
    (tick) =>
      svg`<path class="grid" d="M${at(tick)} 0V${height - 18}"/><text class="tick ${tick === 0 ? 'start' : 'middle'}" x="${at(tick)}" y="${height - 4}">${shareText(tick).replace('.0', '')}</text>
`,
  );
  return svg`<svg class="drawing chances" viewBox="0 0 ${WIDTH} ${height}" role="img" aria-label="${alternative}">
${ticks}${bars.map(bar)}</svg>`;
}

const at = (share: number): string => coordinate(LEFT + share * (RIGHT - LEFT));

function bar({ label, share, low, high }: ChanceBar, i: number): Markup {
  const top = i * ROW;
  const middle = top + 30;
  return svg`<text x="${LEFT}" y="${top + 14}">${label}</text>
<rect class="useful" x="${LEFT}" y="${top + 20}" width="${coordinate(share * (RIGHT - LEFT))}" height="20"/>
<path class="interval" d="M${at(low)} ${middle}H${at(high)}M${at(low)} ${middle - 5}v10M${at(high)} ${middle - 5}v10"/>
<text class="end" x="${WIDTH - 2}" y="${middle + 5}">${shareText(share)}</text>
`;
}
