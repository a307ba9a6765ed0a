/** A shut admission valve that lets air into the cylinder on the way back. */
import { degreesText, gaugeText, percent } from '../../words.ts';
import type { Cause, Evidence, Suspect } from '../cause.ts';

function suspects({ scan, spec }: Evidence): Suspect[] {
  const room = spec.atmosphere.pressure;
  const shut = scan.filter(({ admission, angle }) => !admission && angle > Math.PI);
  const worst = shut.reduce<(typeof shut)[number] | undefined>(
    (best, own) => (best === undefined || own.cylinderPressure > best.cylinderPressure ? own : best),
    undefined,
  );
  if (worst === undefined) return [];
  const share = (worst.cylinderPressure - room) / (spec.supply.pressure - room);
  return [
    {
      cause: 'An admission valve that leaks into the cylinder on the return stroke',
      weight: Math.min(1, Math.max(0, share)),
      number: `Standing at ${degreesText(worst.angle)} with the admission shut, the cylinder fills to ${gaugeText(worst.cylinderPressure, room)} by the scenario, ${percent(Math.max(0, share))} of the supply.`,
      test: 'Clamp the crank there and put a gauge on the cylinder: how far it rises is how far the valve leaks against the exhaust (bench test “pressure decay”, chest to cylinder).',
    },
  ];
}

export const valveLeakBackCause: Cause = { symptoms: ['kicks back', 'moves and stops'], suspects };
