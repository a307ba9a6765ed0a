/** Pressure that is lost on the way in, thrown away at release, or stands against the piston on the way out. */
import type { RunResult, SettledCycle } from '../../run/result.ts';
import {
  admissionOpen,
  liesBetween,
  meanBetween,
  releasePressure,
  workingPressure,
} from '../cycle-reading.ts';
import { angleText, barText, gaugeText, shareText, workText } from '../figures.ts';
import { prospectOf } from './ideal-turn.ts';
import { prospectText } from './prospect-words.ts';
import type { Suggestion } from './suggestion.ts';

/** By how much an earlier and a later cut-off are tried on the loss-free turn. */
const EARLIER = 0.9;
const LATER = 1.1;

/** Cut-off earlier than this leaves an engine that starts from few crank angles; earlier still is no advice. */
const EARLIEST_CUT_OFF = 0.15;

export function lateCutOff(cycle: SettledCycle, result: RunResult): Suggestion | undefined {
  if (cycle.cutOffFraction < EARLIEST_CUT_OFF) return undefined;
  const earlier = prospectOf(cycle, result, ({ cutOff }) => ({ cutOff: EARLIER * cutOff }));
  // An engine that needs all the work there is would stop.
  if (earlier === undefined || !earlier.suffices || earlier.airPerWork >= 1) return undefined;
  const { engine } = result;
  const pressure = releasePressure(cycle);
  return {
    share: (pressure - engine.atmosphericPressure) / workingPressure(engine),
    text:
      `Try an earlier cut-off: the air is still at ${gaugeText(pressure, engine.atmosphericPressure)} when the exhaust ` +
      `opens, and with the admission shut before ${shareText(cycle.cutOffFraction)} of the stroke it could expand ` +
      'further. Each turn then pushes less, so go in small steps and see that it still starts.',
    effect: prospectText('a cut-off a tenth earlier', earlier),
  };
}

export function earlyCutOff(cycle: SettledCycle, result: RunResult): Suggestion {
  const { engine } = result;
  const pressure = releasePressure(cycle);
  const later = prospectOf(cycle, result, ({ cutOff, release }) => ({
    cutOff: Math.min(release, LATER * cutOff),
  }));
  return {
    share: (engine.atmosphericPressure - pressure) / workingPressure(engine),
    text:
      `Try a later cut-off or an earlier release: the air has expanded to ${gaugeText(pressure, engine.atmosphericPressure)}, ` +
      'below the atmosphere, before the exhaust opens, and holds the piston back.',
    ...(later ? { effect: prospectText('a cut-off a tenth later', later) } : {}),
  };
}

/** What a pressure that is missing over a part of the stroke costs: the mean difference times what is swept there. */
const moreWork = (lost: number, swept: number, { work }: SettledCycle): string =>
  `Without that a turn would do up to ${workText(lost * swept)} more, ${shareText((lost * swept) / work.indicated)} of what it does now.`;

export function hoseLoss(cycle: SettledCycle, { engine }: RunResult): Suggestion {
  const { events, profile, cutOffFraction } = cycle;
  const chest = meanBetween(profile, events.admission, events.cutOff, (p, i) => p.chestPressure[i] ?? NaN);
  const lost = engine.supplyPressure - chest;
  return {
    share: lost / workingPressure(engine),
    text:
      `Try a wider or shorter hose, ${engine.regulatorInlet === undefined ? 'or a larger chest' : 'or a regulator that passes more'}: while the admission is open the chest is on average ` +
      `${barText(lost)} below the regulator.`,
    effect: moreWork(lost, cutOffFraction * engine.sweptVolume, cycle),
  };
}

/** Over the outward stroke only: before dead centre the piston runs against the air anyway. */
export function portLoss(cycle: SettledCycle, { engine }: RunResult): Suggestion {
  const { events, profile, cutOffFraction } = cycle;
  const from = liesBetween(0, events.admission, events.cutOff) ? 0 : events.admission;
  const lost = meanBetween(
    profile,
    from,
    events.cutOff,
    (p, i) => (p.chestPressure[i] ?? NaN) - (p.ends[0].pressure[i] ?? NaN),
  );
  const lead = admissionOpen(events, 0)
    ? ''
    : ` It opens only at ${angleText(events.admission)}, after dead centre.`;
  return {
    share: lost / workingPressure(engine),
    text:
      `Try a larger admission port or one that opens sooner: on the way out the cylinder is on average ${barText(lost)} ` +
      `below the chest while the port is open.${lead}`,
    effect: moreWork(lost, cutOffFraction * engine.sweptVolume, cycle),
  };
}

/** From bottom dead centre until the exhaust shuts. */
export function backPressure(cycle: SettledCycle, { engine }: RunResult): Suggestion | undefined {
  const { events, profile } = cycle;
  if (!liesBetween(events.compression, Math.PI, 2 * Math.PI)) return undefined;
  const against = meanBetween(profile, Math.PI, events.compression, (p, i) => p.ends[0].pressure[i] ?? NaN);
  const excess = against - engine.atmosphericPressure;
  return {
    share: excess / workingPressure(engine),
    text:
      `Try a larger exhaust port or an earlier release: on the way back the piston pushes against ${barText(excess)} ` +
      'above the atmosphere on average while the exhaust is open.',
    effect: moreWork(excess, engine.sweptVolume, cycle),
  };
}
