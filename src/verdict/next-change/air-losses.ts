/** Air that is paid for and does no work. */
import type { RunResult, SettledCycle } from '../../run/result.ts';
import { openTogether } from '../cycle-reading.ts';
import { airText, angleText, shareText } from '../figures.ts';
import type { Suggestion } from './suggestion.ts';

export function largestLeak(
  { air, airFlowAnr }: SettledCycle,
  { engine }: RunResult,
): Suggestion | undefined {
  const [first, ...others] = air.leaks;
  if (first === undefined) return undefined;
  const { name, share } = others.reduce((worst, leak) => (leak.share > worst.share ? leak : worst), first);
  return {
    share,
    text: `Try a closer fit at the largest leak, “${name}”: ${shareText(share)} of all air is lost there.`,
    effect: `Closed altogether, it would save ${airText(share * airFlowAnr, engine.gas)}; with half the gap, between half and seven eighths of that.`,
  };
}

export function blowThrough({ air, airFlowAnr, events }: SettledCycle, { engine }: RunResult): Suggestion {
  const overlap = openTogether(events);
  const timing = overlap > 0 ? `; the ports are open together for ${angleText(overlap)}` : '';
  return {
    share: air.blowThroughShare,
    text:
      `Try a timing in which the exhaust is shut before the admission opens: ${shareText(air.blowThroughShare)} of the ` +
      `air goes straight from one to the other${timing}.`,
    effect: `That would save up to ${airText(air.blowThroughShare * airFlowAnr, engine.gas)}.`,
  };
}
