/**
 * The exhaust heard from the pressure at release: above 1/b* times the room (1.89 for air) the gas leaves at the speed of
 * sound, each release a report; below it, a puff. A rule of our own on the critical pressure ratio of nozzle flow; no
 * level is reckoned, for that depends on port, pipe and room.
 */
import type { EngineFacts, RunResult, SettledCycle } from '../../run/result.ts';
import { releasePressure } from '../cycle-reading.ts';
import { figure, gaugeText } from '../figures.ts';
import type { Caution } from './caution.ts';

/** Pressure at release over that of the room, and how much of it makes the blow-down choke. */
export function releaseRatio(pressure: number, engine: EngineFacts): { ratio: number; choked: boolean } {
  const ratio = pressure / engine.atmosphericPressure;
  return { ratio, choked: ratio > 1 / engine.gas.criticalPressureRatio };
}

/** Every working end lets go once a turn [1/s]. */
export const releasesPerSecond = ({ speed, profile }: SettledCycle): number =>
  (profile.ends.length * speed) / (2 * Math.PI);

export function noiseCaution({ settled, engine }: RunResult): Caution | undefined {
  if (settled === undefined) return undefined;
  const pressure = releasePressure(settled);
  const { ratio, choked } = releaseRatio(pressure, engine);
  const critical = figure(1 / engine.gas.criticalPressureRatio);
  const times = `${figure(releasesPerSecond(settled), 2)} times a second`;
  const stands = `the cylinder stands at ${gaugeText(pressure, engine.atmosphericPressure)}, ${figure(ratio)} times the room`;
  return {
    topic: 'Noise',
    text: [
      `When the exhaust opens, ${times}, ${stands}.`,
      choked
        ? `Above ${critical} times, the critical ratio, a free jet leaves at the speed of sound: sharp reports, loud at any distance you can work at.`
        : `Below ${critical} times, the critical ratio, it leaves slower than sound: puffs, still loud close by.`,
      'Wear ear protection; a silencer must not choke with ice or oil. No level is reckoned here: measure it, and keep to ' +
        'the local rules on noise.',
    ].join(' '),
    severity: choked ? 'caution' : 'note',
  };
}
