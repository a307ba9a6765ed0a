/** Air shut in on the return stroke and pressed together. */
import { pow } from '../../../numerics/elementary/power.ts';
import { cos } from '../../../numerics/elementary/trigonometric.ts';
import { square } from '../../../numerics/elementary/whole-powers.ts';
import { gaugeText, percent, workText } from '../../words.ts';
import type { Cause, Evidence, Suspect } from '../cause.ts';

/**
 * p V^γ = constant from where the exhaust shuts to the dead centre, from room pressure on: an upper figure, for what leaks
 * away meanwhile only helps.
 */
function suspects({ result, spec, inertia }: Evidence): Suspect[] {
  const { events, clearanceVolume, sweptVolume, ends, gas } = result.engine;
  const perEnd = { clearance: clearanceVolume / ends.length, swept: sweptVolume / ends.length };
  const shutIn = perEnd.clearance + perEnd.swept * (0.5 - 0.5 * cos(events.compression));
  const room = spec.atmosphere.pressure;
  const gamma = gas.heatCapacityRatio;
  const ratio = shutIn / perEnd.clearance;
  const peak = room * pow(ratio, gamma);
  const work =
    (room * shutIn * (pow(ratio, gamma - 1) - 1)) / (gamma - 1) - room * (shutIn - perEnd.clearance);
  const over = (peak - room) / (spec.supply.pressure - room);
  const stored = 0.5 * inertia * square(2 * Math.PI);
  return [
    {
      cause: 'Exhaust that shuts too early, so that air is compressed',
      weight: Math.min(1, Math.max(work / (work + stored), over > 1 ? 0.6 : 0)),
      number: `From where the exhaust shuts, the air is pressed to ${gaugeText(peak, room)}, ${percent(Math.max(0, over))} of the supply; that takes ${workText(Math.max(0, work), 2)} a turn.`,
      test: 'Hose off, turn it over by hand: it must not spring back near the dead centre. If it does, let the exhaust shut later, or give more clearance.',
    },
  ];
}

export const compressionCause: Cause = { symptoms: ['moves and stops', 'kicks back'], suspects };
