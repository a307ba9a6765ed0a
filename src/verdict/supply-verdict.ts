/** Minutes of supply in words: how long, how fast after that, and what would suffice. */
import { inUnits, unitSystem, type UnitSystem } from '../quantity/unit-system.ts';
import type { NoSupplyTimeline, SupplyTimeline } from '../run/supply/timeline.ts';
import type { Caution } from './cautions/caution.ts';
import { gaugeText, inReadersUnits, shareText, speedText } from './figures.ts';
import type { KeyFigure } from './key-figures.ts';
import { supplyCautions } from './supply-cautions.ts';
import { startsText, supplyFigures, timeText } from './supply-figures.ts';
import { supplyStatements } from './supply-statements.ts';

/** Minutes of supply as a builder hears them. */
export interface SupplyVerdict {
  /** One or two sentences: for how long the pressure holds, and what then. */
  readonly headline: string;
  readonly figures: readonly KeyFigure[];
  readonly statements: readonly string[];
  readonly cautions: readonly Caution[];
}

/** Puts a timeline into words, in the units that are wanted. */
export const supplyVerdict = (
  timeline: SupplyTimeline | NoSupplyTimeline,
  units: UnitSystem = unitSystem(),
): SupplyVerdict => inUnits(units, () => told(timeline));

function told(timeline: SupplyTimeline | NoSupplyTimeline): SupplyVerdict {
  if (!timeline.runs)
    return {
      headline: 'It does not run on a full receiver, so there are no minutes to tell.',
      figures: [],
      statements: [inReadersUnits(timeline.outcome.reason)],
      cautions: [],
    };
  return {
    headline: headlineOf(timeline),
    figures: supplyFigures(timeline),
    statements: supplyStatements(timeline),
    cautions: supplyCautions(timeline),
  };
}

function headlineOf(timeline: SupplyTimeline): string {
  const { end, timeToSag } = timeline;
  if (end.kind === 'cycles') return keepsUp(timeline);
  const holds =
    timeToSag === undefined ? '' : `A full receiver holds the pressure for ${timeText(timeToSag)}. `;
  if (end.kind === 'stops')
    return `${holds}The compressor cannot keep the engine turning: it stops after ${timeText(end.time)}.`;
  const receiver = gaugeText(end.pressure, timeline.facts.atmosphericPressure);
  return timeToSag === undefined
    ? `The compressor keeps up only by never stopping: the receiver settles at ${receiver}, and the engine does ` +
        `${speedText(end.speed)}.`
    : `${holds}Then it sags to ${receiver}, where the engine does ${speedText(end.speed)} instead of ` +
        `${speedText(timeline.speed)} and the compressor never stops.`;
}

function keepsUp({ duty, startsPerHour, speed, facts: { compressor } }: SupplyTimeline): string {
  const { duty_rating } = compressor;
  const runs =
    duty > duty_rating
      ? `keeps up, but runs ${shareText(duty)} of the time, where its maker allows ${shareText(duty_rating)}`
      : `keeps up: it runs ${shareText(duty)} of the time`;
  return (
    `The compressor ${runs}, starting ${startsText(startsPerHour)}. The pressure never sags and the engine keeps its ` +
    `${speedText(speed)}.`
  );
}
