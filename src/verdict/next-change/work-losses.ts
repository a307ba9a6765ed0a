/** Work that is done on the piston and does not reach the load. */
import type { SettledCycle } from '../../run/result.ts';
import { shareText, workText } from '../figures.ts';
import type { Suggestion } from './suggestion.ts';

/** A load takes up what is saved; an engine without one turns faster until its drag does. */
const saved = (amount: number, load: number): string =>
  load > 0
    ? `Half of that saved is ${workText(amount)} more for the load, ${shareText(amount / load)} of what it gets now.`
    : `Half of that saved is ${workText(amount)} a turn, which would make it turn faster.`;

export function drag({ work }: SettledCycle): Suggestion {
  const causes = [
    { name: 'the bearings', amount: work.bearings, remedy: 'Try freer bearings or less preload' },
    { name: 'the piston', amount: work.piston, remedy: 'Try a freer piston or packing' },
    {
      name: 'the valve gear',
      amount: work.valveGear,
      remedy: 'Try a thinner film, less preload or a wider gap in the valve gear',
    },
  ] as const;
  const worst = causes.reduce((a, b) => (b.amount > a.amount ? b : a));
  const share = worst.amount / work.indicated;
  return {
    share,
    effect: saved(worst.amount / 2, work.load),
    text: `${worst.remedy}: ${worst.name} takes up ${workText(worst.amount)} a turn, ${shareText(share)} of the work on the piston.`.replace(
      'bearings takes',
      'bearings take',
    ),
  };
}
