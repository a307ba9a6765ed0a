/** The pressure does not reach the valve: hose, fittings or regulator are too narrow for what leaks or flows. */
import { gaugeText, percent } from '../../words.ts';
import type { Cause, Evidence, Suspect } from '../cause.ts';

function suspects({ place, result, spec }: Evidence): Suspect[] {
  const room = spec.atmosphere.pressure;
  const set = spec.supply.pressure;
  const { settled } = result;
  const chest = settled?.profile.chestPressure;
  const running = chest === undefined ? undefined : chest.reduce((a, b) => a + b, 0) / chest.length;
  const there = running ?? place.chestPressure;
  const lost = 1 - (there - room) / (set - room);
  return [
    {
      cause: 'Hose, fittings or regulator too narrow',
      weight: Math.min(1, Math.max(0, 3 * lost)),
      number: `${running === undefined ? 'Standing' : 'Running'}, ${gaugeText(there, room)} of the ${gaugeText(set, room)} set reach the chest: ${percent(Math.max(0, lost))} are lost on the way.`,
      test: 'Screw a gauge into the chest and read it in the moment it stops; at the regulator the pressure looks good all the time.',
    },
  ];
}

export const starvedChestCause: Cause = { symptoms: ['moves and stops', 'runs then dies'], suspects };
