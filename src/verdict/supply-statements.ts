/** Plain sentences about minutes of supply, each derived from its numbers. */
import type { SupplyTimeline } from '../run/supply/timeline.ts';
import { gaugeText, litresText, pressureText, shareText } from './figures.ts';
import { flowText, timeText } from './supply-figures.ts';

/** A receiver that closes its books worse than this has been followed badly. */
const TRUSTED_RESIDUAL = 1e-6;

export const supplyStatements = (timeline: SupplyTimeline): readonly string[] =>
  [
    whatIsReckoned(timeline),
    untilThen(timeline),
    lowerSetting(timeline),
    compressorThatSuffices(timeline),
    longerReceiver(timeline),
    calmerReceiver(timeline),
    doubts(timeline),
  ].filter((sentence) => sentence !== '');

function whatIsReckoned({ facts, answers }: SupplyTimeline): string {
  const { compressor, atmosphericPressure } = facts;
  return (
    `Reckoned from a receiver of ${litresText(compressor.receiver_volume)} full at ` +
    `${pressureText(compressor.cut_out, atmosphericPressure)}, with the engine at speed, from ${answers.length} settled ` +
    'answers between there and where it stops. ANR is reference air after ISO 8778 (100 kPa absolute, 20 °C, 65 % ' +
    'relative humidity); free air is air as it is in the room.'
  );
}

function untilThen({ end, timeToSag, stallPressure, facts }: SupplyTimeline): string {
  const stall = gaugeText(stallPressure, facts.atmosphericPressure);
  if (end.kind === 'stops')
    return `It stops when the receiver has fallen to ${stall}; with the engine at rest the compressor fills it again.`;
  return timeToSag === undefined ? '' : `It would not run on below ${stall} in the receiver.`;
}

/** A regulator set to what can be kept up never sags. One with droop stands in the way of saying it so simply. */
function lowerSetting({ end, timeToSag, facts }: SupplyTimeline): string {
  if (end.kind !== 'settles' || timeToSag === undefined || facts.droopingRegulator) return '';
  return (
    `With the regulator set to ${gaugeText(end.pressure, facts.atmosphericPressure)} or less nothing would sag, and ` +
    'the engine would run at that lower speed from the start.'
  );
}

function compressorThatSuffices({ sufficient, facts, duty }: SupplyTimeline): string {
  const { duty_rating, free_air_delivery } = facts.compressor;
  const needs = flowText(sufficient.freeAirDelivery);
  if (sufficient.freeAirDelivery <= free_air_delivery)
    return (
      `${needs} of free air would do instead of its ${flowText(free_air_delivery)}; it would then run the ` +
      `${shareText(duty_rating)} of the time that its maker allows.`
    );
  const reason =
    duty < 1
      ? `to rest as its maker asks, running ${shareText(duty_rating)} of the time`
      : 'to hold the pressure';
  const rating =
    duty < 1 || duty_rating >= 1 ? '' : ` and run no more than ${shareText(duty_rating)} of the time`;
  return (
    `A compressor has to give ${needs} of free air ${reason}${rating}; this one gives ${flowText(free_air_delivery)}, both ` +
    'stated at the same pressure.'
  );
}

function longerReceiver({ receiverForTime, wantedTime, facts }: SupplyTimeline): string {
  if (receiverForTime === undefined) return '';
  const wanted = timeText(wantedTime);
  const { receiver_volume } = facts.compressor;
  if (receiverForTime <= receiver_volume) return `The receiver lasts the ${wanted} that are wanted.`;
  return (
    `To hold the pressure for ${wanted} the receiver would have to be ${litresText(receiverForTime)} instead of ` +
    `${litresText(receiver_volume)}. It has to be filled again after that: a receiver only buys time.`
  );
}

function calmerReceiver({ receiverForStarts, facts }: SupplyTimeline): string {
  const { receiver_volume, starts_per_hour } = facts.compressor;
  if (receiverForStarts === undefined || receiverForStarts <= receiver_volume) return '';
  return (
    `For no more than ${starts_per_hour} starts an hour the receiver would have to be ${litresText(receiverForStarts)} ` +
    `instead of ${litresText(receiver_volume)}, or cut-in and cut-out that much further apart.`
  );
}

function doubts({ ledgerResidual }: SupplyTimeline): string {
  return ledgerResidual <= TRUSTED_RESIDUAL
    ? ''
    : `The books of the receiver do not close: ${shareText(ledgerResidual)} of its air is unaccounted for, so trust no figure here.`;
}
