/** What to try first with an engine that does not run yet, outcome by outcome. */
import type { OutcomeKind } from '../../run/outcome.ts';
import type { RunResult, StandStill } from '../../run/result.ts';
import { turnedBetween } from '../cycle-reading.ts';
import { admissionOpenAt, placeText, severalEnds } from '../ends.ts';
import { airText, angleText, gaugeText, secondsText, torqueText } from '../figures.ts';
import { foundText, inVainText } from './trial-words.ts';

/** A crank that turned less than this at the start has not moved [rad]. */
const MOVED = Math.PI / 18;

const advice: Readonly<Record<OutcomeKind, (result: RunResult) => string>> = {
  settled: () => 'Nothing here asks for a change.',
  'no-start': (result) => gearSetOver(result) ?? tighterFirst(result) ?? startingPosition(result),
  stalled: (result) => gearSetOver(result) ?? tighterFirst(result) ?? lighterRunning(result),
  'runs-backwards': ({ engine, trace }) =>
    `Try a starting position between top dead centre and cut-off at ${angleText(engine.events.cutOff)}, or a push by ` +
    `hand: left at ${angleText(turnedBetween(0, trace.crankAngle[0] ?? 0))}, the air turns it the wrong way.` +
    (engine.reverse === undefined ? ' How it runs that way, `running_direction: reverse` tells.' : ''),
  'not-settled': ({ outcome }) =>
    `Try a longest time of more than ${secondsText(outcome.time)}, until the speed stops changing.`,
  'step-limit': checkInput,
  'non-finite': checkInput,
};

/** What a trial has shown comes before what the result alone makes likely. */
export function towardsRunning(result: RunResult): string {
  const { outcome, trials } = result;
  const found = trials && foundText(trials);
  if (found !== undefined) return found;
  const inVain = trials && inVainText(trials);
  return [advice[outcome.kind](result), ...(inVain === undefined ? [] : [inVain])].join(' ');
}

/** In reverse a gear that stays as it is lets the air in as the piston comes up. */
function gearSetOver({ engine }: RunResult): string | undefined {
  if (engine.reverse === undefined || engine.reverse.gearServes) return undefined;
  const { admission, cutOff } = engine.events;
  return (
    'Try a valve gear that can be set over for reverse: a slip eccentric, disc plates that turn to a second stop, a tap that ' +
    'exchanges the pipes of an oscillating cylinder, a controller for electric valves. This one is left as it is for ' +
    `running forward, and in reverse it lets air in from ${angleText(admission)} to ${angleText(cutOff)} after top dead centre.`
  );
}

const orMore = (missingTorque: number | undefined): string =>
  missingTorque === undefined ? '' : `; at rest ${torqueText(missingTorque)} are missing`;

/** Share of the regulator's gauge pressure that leaks may cost an engine at rest before they come first. */
const LEAKS_COME_FIRST = 0.15;

/** When the leaks alone pull the chest well below the regulator, nothing else is worth trying before them. */
function tighterFirst({ engine, standStill }: RunResult): string | undefined {
  const leak = standStill?.leaks[0];
  if (standStill === undefined || leak === undefined) return undefined;
  const lost = engine.supplyPressure - standStill.chestPressure;
  if (lost < LEAKS_COME_FIRST * (engine.supplyPressure - engine.atmosphericPressure)) return undefined;
  return leakAdvice(engine, standStill, leak.name);
}

function leakAdvice(engine: RunResult['engine'], standStill: StandStill, worst: string): string {
  const chest = gaugeText(standStill.chestPressure, engine.atmosphericPressure);
  const regulator = gaugeText(engine.supplyPressure, engine.atmosphericPressure);
  return (
    `Try to close the leak “${worst}” first, with a smaller gap there: even at rest ${airText(standStill.airFlowAnr, engine.gas)} ` +
    `get away, and the hose brings only ${chest} of the regulator's ${regulator} to the valve. With half the gap between half and an eighth of that leak is left.`
  );
}

function lighterRunning({ outcome }: RunResult): string {
  return (
    `Try less load, more supply pressure or freer running parts${orMore(outcome.missingTorque)}; if it only just fails ` +
    'to get over a dead centre, a heavier flywheel or a push by hand may carry it.'
  );
}

function startingPosition({ engine, outcome, trace }: RunResult): string {
  const { admission, cutOff } = engine.events;
  const start = trace.crankAngle[0] ?? outcome.crankAngle;
  if (!engine.ends.some((end) => admissionOpenAt(end, start)))
    return (
      `Try another starting position: at ${angleText(turnedBetween(0, start))} the admission is shut; ` +
      `${severalEnds(engine) ? `that of ${placeText(engine.ends[0].name)}` : 'it'} is open from ` +
      `${angleText(admission)} to ${angleText(cutOff)}.`
    );
  const turned = Math.abs((trace.crankAngle.at(-1) ?? start) - start);
  if (turned > MOVED)
    return (
      `Try a push by hand or a heavier flywheel: the air turns the crank by ${angleText(turned)}, but nothing carries it ` +
      `on from there${orMore(outcome.missingTorque)}.`
    );
  return (
    `Try less load or friction, or more supply pressure: the admission is open and yet the crank stays where it is` +
    `${orMore(outcome.missingTorque)}. A starting position where the crank has more leverage may do as well.`
  );
}

function checkInput({ engine }: RunResult): string {
  return (
    'Check the sizes for slips of a decimal point' +
    (engine.derivedSizes.length > 0 ? ', the derived ones below too' : '') +
    '; if they are all meant, the reckoning is at fault and not the engine.'
  );
}
