/**
 * Parts that grow into each other: a piston of light alloy grows more than its iron or steel bore. Over a warming of ΔT the
 * radial clearance closes by Δα·ΔT·D/2, with Δα = 23e-6 − 11e-6 1/K (aluminium on cast iron, handbooks, from memory).
 */
import { percent, plain, shown } from '../../words.ts';
import type { Cause } from '../cause.ts';

const DIFFERENCE = 12e-6;
/** A piston that works itself warm by friction: common practice, no source [K]. */
const WARMING = 30;

export const warmPartsCause: Cause = {
  symptoms: ['runs then dies'],
  suspects: ({ spec }) => {
    const { bore } = spec.cylinder;
    const closes = (DIFFERENCE * WARMING * bore) / 2;
    const gaps = spec.leaks.flatMap(({ kind, values }) => {
      const own = values['clearance'];
      return kind === 'plain piston' && typeof own === 'object' && own !== null && 'gap' in own
        ? [Number(own.gap)]
        : [];
    });
    const [gap] = gaps;
    const number =
      gap === undefined
        ? `Warmed by ${WARMING} K, an aluminium piston of ${shown(bore, 'length')} closes ${shown(closes, 'length', 2)} of its clearance in an iron bore.`
        : `Warmed by ${WARMING} K, an aluminium piston closes ${shown(closes, 'length', 2)} of its ${shown(gap, 'length', 2)} of clearance in an iron bore, ${percent(Math.min(1, closes / gap))}.`;
    return [
      {
        cause: 'Parts that grow into each other as they get warm',
        weight: gap === undefined ? 0.25 : Math.min(0.9, closes / gap / 1.5),
        number: `${number} Like metals do not do that.`,
        test: `Hang the weight on the rim as soon as it has died, and again when it is cold (bench test “break-away”): more than ${plain(1.3)} times as much warm speaks for it.`,
      },
    ];
  },
};
