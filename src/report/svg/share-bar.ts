/** A horizontal bar cut into shares. Every filling has its own colour and hatching. */
import { shareText } from '../../verdict/figures.ts';
import { svg, type Markup } from '../html/markup.ts';

/** Names a colour and a hatching of the style sheet. */
export type Filling = 'useful' | 'lost-a' | 'lost-b' | 'lost-c' | 'rest';

export interface Share {
  readonly label: string;
  readonly share: number;
  readonly filling: Filling;
}

/** Shares that are not above zero are left out; the others keep their size. */
export function shareBar(id: string, shares: readonly Share[], name: string): Markup {
  const alternative = `${name}: ${shares.map(({ label, share }) => `${label} ${shareText(share)}`).join(', ')}.`;
  let begin = 0;
  const pieces = shares
    .filter(({ share }) => share > 0)
    .map(({ share, filling }) => {
      const piece = filledPiece(id, filling, percent(begin), percent(share));
      begin += share;
      return piece;
    });
  return svg`<svg class="bar" width="100%" height="44" role="img" aria-label="${alternative}">${hatchings(id, shares)}${pieces}</svg>`;
}

function filledPiece(id: string, filling: Filling, x: string, width: string): Markup {
  const whole = svg`width="100%" height="100%"`;
  return svg`<svg x="${x}" width="${width}"><rect class="${filling}" ${whole}/><rect class="piece" fill="url(#${id}-${filling})" ${whole}/></svg>`;
}

export function shareSwatch(id: string, filling: Filling): Markup {
  return svg`<svg class="swatch" width="18" height="14" aria-hidden="true">${filledPiece(id, filling, '0', '18')}</svg>`;
}

const strokes: Readonly<Record<Filling, string>> = {
  useful: '',
  'lost-a': 'M-2 2L2 -2M0 8L8 0M6 10L10 6',
  'lost-b': 'M0 2H8M0 6H8',
  'lost-c': 'M2 0V8M6 0V8',
  rest: 'M4 4h.01',
};

function hatchings(id: string, shares: readonly Share[]): Markup {
  const used = [...new Set(shares.map(({ filling }) => filling))];
  const patterns = used.map(
    (filling) =>
      svg`<pattern id="${id}-${filling}" width="8" height="8" patternUnits="userSpaceOnUse"><path class="hatch" d="${strokes[filling]}"/></pattern>`,
  );
  return svg`<defs>${patterns}</defs>`;
}

const percent = (share: number): string => `${Number((100 * share).toFixed(3))}%`;
