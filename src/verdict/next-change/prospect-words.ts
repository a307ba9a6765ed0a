/** What a change can be expected to bring, in a sentence, by the loss-free turn. */
import { shareText } from '../figures.ts';
import type { Prospect } from './ideal-turn.ts';

/** Closer to 1 than this, a figure stays as it is for all that can be said. */
const NOTICED = 0.005;

function compared(ratio: number, what: string): string {
  if (Math.abs(ratio - 1) < NOTICED) return `as much ${what}`;
  return `${shareText(Math.abs(ratio - 1))} ${ratio > 1 ? 'more' : 'less'} ${what}`;
}

/** `tried` says with what, in as small a step as the prospect is for. */
export function prospectText(tried: string, { airPerWork, work }: Prospect): string {
  return (
    `By the loss-free turn, with ${tried} it would take ${compared(airPerWork, 'air for its work')} and do ` +
    `${compared(work, 'work a turn')}.`
  );
}
