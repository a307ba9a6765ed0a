/** What can hurt about hours on a compressor; the last word is left to local codes and licensed people. */
import type { SupplyTimeline } from '../run/supply/timeline.ts';
import type { Caution } from './cautions/caution.ts';
import { storedEnergy } from './cautions/stored-energy.ts';
import { figure, gaugeText, litresText, shareText, workText } from './figures.ts';

type SupplyCautionRule = (timeline: SupplyTimeline) => Caution | undefined;

const hotCompressor: SupplyCautionRule = ({ duty, facts: { compressor } }) => {
  if (duty <= compressor.duty_rating) return undefined;
  return {
    topic: 'Hot compressor',
    text:
      `It would run ${shareText(duty)} of the time and its maker allows ${shareText(compressor.duty_rating)}. Motor and head ` +
      'overheat, and oil in a hot delivery pipe chars and can catch fire. Run in spells with rests between them, keep hands ' +
      'off head and delivery pipe, and ask its maker.',
    severity: 'caution',
  };
};

const frequentStarts: SupplyCautionRule = ({ startsPerHour, facts: { compressor } }) => {
  if (startsPerHour <= compressor.starts_per_hour) return undefined;
  return {
    topic: 'Frequent starts',
    text:
      `${figure(startsPerHour, 2)} starts an hour, where the motor is allowed ${compressor.starts_per_hour}: each start draws ` +
      'several times its running current and heats the winding. Its thermal cut-out is there to stop it; do not bridge it.',
    severity: 'caution',
  };
};

const startsAgain: SupplyCautionRule = ({ end }) => {
  if (end.kind !== 'stops') return undefined;
  return {
    topic: 'Stopped under air',
    text:
      'An engine that stops for want of pressure still has the air on. When the receiver has filled again it may set off by ' +
      'itself: shut the valve and vent the chest before going near it.',
    severity: 'danger',
  };
};

const receiver: SupplyCautionRule = ({ facts, receiverForTime, receiverForStarts }) => {
  const { compressor, atmosphericPressure, heatCapacityRatio } = facts;
  const energy = (volume: number): string =>
    workText(storedEnergy(compressor.cut_out, atmosphericPressure, volume, heatCapacityRatio));
  const larger = Math.max(receiverForTime ?? 0, receiverForStarts ?? 0);
  const more =
    larger > compressor.receiver_volume
      ? ` ${litresText(larger)} would hold ${energy(larger)}: stored energy grows as the time it buys.`
      : '';
  return {
    topic: 'Receiver',
    text:
      `Full at ${gaugeText(compressor.cut_out, atmosphericPressure)}, ${litresText(compressor.receiver_volume)} hold up to ` +
      `${energy(compressor.receiver_volume)} (Brode's rule).${more} A receiver has to be built, marked and inspected for its ` +
      'pressure, with a relief valve of its own that no tap can shut off, and drained of water daily. The local code for ' +
      'pressure vessels and its licensed inspectors decide, not this reckoning.',
    severity: 'danger',
  };
};

const rules: readonly SupplyCautionRule[] = [startsAgain, hotCompressor, frequentStarts, receiver];

export const supplyCautions = (timeline: SupplyTimeline): readonly Caution[] =>
  rules.flatMap((rule) => rule(timeline) ?? []);
