/** The first thing to say about a result. */
import type { OutcomeKind } from '../run/outcome.ts';
import type { CompressorVerdict } from '../run/compressor-verdict.ts';
import type { RunResult, SettledCycle } from '../run/result.ts';
import {
  angleText,
  minutesText,
  powerText,
  secondsText,
  shareText,
  speedText,
  torqueText,
} from './figures.ts';

const headlines: Readonly<Record<OutcomeKind, (result: RunResult) => string>> = {
  settled: (result) =>
    result.settled === undefined
      ? 'It runs.'
      : [running(result.settled, inReverse(result)), compressorSentence(result.compressor)].join(' ').trim(),
  stalled: ({ outcome }) =>
    `It stops: after ${turnsText(outcome.turns)} it comes to rest ${angleText(outcome.crankAngle)} after top dead ` +
    `centre${shortOf(outcome.missingTorque)}.`,
  'no-start': (result) =>
    `It does not start${inReverse(result)}: the crank comes to rest ${angleText(result.outcome.crankAngle)} after top ` +
    `dead centre${shortOf(result.outcome.missingTorque)}.`,
  'runs-backwards': ({ engine }) =>
    engine.reverse === undefined ? 'It runs, but backwards.' : 'It runs, but forward and not in reverse.',
  'not-settled': (result) =>
    `It turns${inReverse(result)}, but has not settled: after ${secondsText(result.outcome.time)} it is doing ` +
    `${speedText(lastSpeed(result))} and still changing.`,
  'step-limit': unfinished,
  'non-finite': unfinished,
};

export const headlineOf = (result: RunResult): string => headlines[result.outcome.kind](result);

const inReverse = ({ engine }: RunResult): string => (engine.reverse === undefined ? '' : ' in reverse');

function running(cycle: SettledCycle, direction: string): string {
  const power =
    cycle.brakePower > 0 ? `with ${powerText(cycle.brakePower)} into the load` : 'with no load to drive';
  return `It runs${direction} and settles at ${speedText(cycle.speed)}, ${power}.`;
}

export function compressorSentence(compressor: CompressorVerdict | undefined): string {
  if (compressor === undefined) return '';
  const { keepsUp, duty, dutyRating, minutesUntilSag } = compressor;
  if (!keepsUp) {
    const lasts =
      minutesUntilSag === undefined ? '' : `: a full receiver lasts ${minutesText(minutesUntilSag)}`;
    return `The compressor does not keep up${lasts}.`;
  }
  return duty > dutyRating
    ? `The compressor keeps up only by running ${shareText(duty)} of the time, above its rating of ${shareText(dutyRating)}.`
    : `The compressor keeps up, running ${shareText(duty)} of the time.`;
}

function shortOf(missingTorque: number | undefined): string {
  return missingTorque === undefined ? '' : `, ${torqueText(missingTorque)} short of the torque to move on`;
}

function unfinished({ outcome }: RunResult): string {
  return (
    `No answer: the reckoning broke off after ${secondsText(outcome.time)} of engine time, ` +
    `${angleText(outcome.crankAngle)} after top dead centre.`
  );
}

export function turnsText(turns: number): string {
  if (turns === 0) return 'no whole turn';
  return turns === 1 ? 'one turn' : `${turns} turns`;
}

export const lastSpeed = ({ trace }: RunResult): number => trace.speed.at(-1) ?? 0;
