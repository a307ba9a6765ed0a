/** The single change that promises most: after the largest loss of an engine that runs, or towards one that does. */
import type { RunResult, SettledCycle } from '../../run/result.ts';
import { suggestionRules } from './registry.ts';
import { towardsRunning } from './towards-running.ts';

/** A loss smaller than this is not worth a new part. */
const SMALLEST_SHARE = 0.03;

export function nextChangeOf(result: RunResult): string {
  return result.settled === undefined ? towardsRunning(result) : afterTheLargestLoss(result.settled, result);
}

function afterTheLargestLoss(cycle: SettledCycle, result: RunResult): string {
  const worth = suggestionRules
    .flatMap((rule) => rule(cycle, result) ?? [])
    .filter(({ share }) => share >= SMALLEST_SHARE)
    .sort((a, b) => b.share - a.share);
  const [best] = worth;
  if (best === undefined) return 'No single loss stands out; nothing here asks for a change.';
  return best.effect === undefined ? best.text : `${best.text} ${best.effect}`;
}
