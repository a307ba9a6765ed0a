/** The figures of minutes of supply, as rows of label and value. */
import type { SupplyEnd, SupplyTimeline } from '../run/supply/timeline.ts';
import { columnText, figure, gaugeText, litresText, minutesText, shareText, speedText } from './figures.ts';
import type { KeyFigure } from './key-figures.ts';

export function supplyFigures(timeline: SupplyTimeline): readonly KeyFigure[] {
  const { facts, duty, startsPerHour, timeToSag, end, stallPressure } = timeline;
  const { atmosphericPressure: room, compressor } = facts;
  return [
    ['regulator', `set to ${gaugeText(facts.setPressure, room)}`],
    ['engine on that', `${speedText(timeline.speed)}, takes ${flowText(timeline.demandAnr)} ANR`],
    ['compressor gives', deliveries(timeline)],
    ['compressor runs', `${shareText(duty)} of the time, rated for ${shareText(compressor.duty_rating)}`],
    ...(startsPerHour === 0
      ? []
      : [['it starts', `${startsText(startsPerHour)}, allowed ${compressor.starts_per_hour}`] as const]),
    ...(timeToSag === undefined ? [] : [['pressure holds', `${timeText(timeToSag)} from full`] as const]),
    ...endFigures(end, room),
    ['it stops below', `${gaugeText(stallPressure, room)} in the receiver`],
    ['would suffice', sufficientText(timeline)],
    ...receivers(timeline),
  ];
}

/** A time [s] as one says it, up to days. */
export const timeText = (seconds: number): string =>
  seconds < 5400 ? minutesText(seconds / 60) : `${figure(seconds / 3600, 2).replace(/\.0$/u, '')} hours`;

/** Starts in an hour, as one says it. */
export function startsText(perHour: number): string {
  if (perHour < 1) return `once in ${timeText(3600 / perHour)}`;
  return perHour < 1.5 ? 'once an hour' : `${perHour.toFixed(0)} times an hour`;
}

/** A volume flow as people shop for it; whether it is ANR or free air stands beside it. */
export const flowText = (flow: number): string => columnText('volume flow', flow);

function deliveries({ deliveryAnr, facts }: SupplyTimeline): string {
  const { compressor, atmosphericPressure: room, setPressure } = facts;
  return (
    `${flowText(deliveryAnr.cutOut)} ANR at ${gaugeText(compressor.cut_out, room)}, ` +
    `${flowText(deliveryAnr.setPressure)} at ${gaugeText(setPressure, room)}`
  );
}

function endFigures(end: SupplyEnd, room: number): KeyFigure[] {
  if (end.kind === 'cycles') return [['pressure holds', 'for ever']];
  if (end.kind === 'stops') return [['engine stops', `after ${timeText(end.time)}`]];
  return [
    ['kept up for ever', `${speedText(end.speed)} with ${gaugeText(end.pressure, room)} in the receiver`],
  ];
}

function sufficientText({ sufficient }: SupplyTimeline): string {
  const receiver = sufficient.receiver === undefined ? '' : `, into ${litresText(sufficient.receiver)}`;
  return `${flowText(sufficient.freeAirDelivery)} of free air, stated as it is for this one${receiver}`;
}

function receivers({ receiverForTime, receiverForStarts, wantedTime, facts }: SupplyTimeline): KeyFigure[] {
  const hours = timeText(wantedTime);
  return [
    ...(receiverForTime === undefined
      ? []
      : [[`receiver for ${hours}`, `${litresText(receiverForTime)}, with this compressor`] as const]),
    ...(receiverForStarts === undefined
      ? []
      : [
          [
            `receiver for ${facts.compressor.starts_per_hour} starts`,
            `${litresText(receiverForStarts)}, with this compressor`,
          ] as const,
        ]),
  ];
}
