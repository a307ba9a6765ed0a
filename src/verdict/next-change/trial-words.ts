/** What became of an engine that does not run when it was tried with changes, in sentences. */
import type {
  ChangedRunning,
  ChangedSetting,
  InVain,
  SlowTurn,
  TriedChange,
  Trials,
} from '../../run/trials.ts';
import { powerText, shareText, speedText, torqueText } from '../figures.ts';
import { compressorSentence } from '../headline.ts';
import { listed } from '../studies/measure-words.ts';

/** More values than this are not told one by one. */
const MOST_TOLD = 2;

/** Torques closer than this share are one. */
const SAME = 0.01;

/** The change that makes the engine run and what it then does; undefined where none was found. */
export function foundText(trials: Trials): string | undefined {
  if (trials.running === undefined) return undefined;
  const { changes, answer, notEnough } = trials.running;
  const alone = changes.length === 1;
  const [nearest] = trials.inVain;
  return [
    alone
      ? `Try ${changeText(changes[0])}: it then ${effectText(answer, trials)}.`
      : `Try two changes together: ${changes.map(changeText).join('; and ')}. It then ${effectText(answer, trials)}.`,
    compressorSentence(answer.compressor),
    ...changes.map(({ proviso }) => proviso ?? ''),
    alone && notEnough ? `${valuesText(notEnough)} would not be enough.` : '',
    !alone && nearest
      ? `Neither makes it run alone. ${slowTurnText('With the first alone,', nearest, trials.slowTurnNow)}`
      : '',
  ]
    .filter(Boolean)
    .join(' ')
    .trim();
}

/** What does not make it run; undefined where nothing was tried. */
export function inVainText({ inVain, slowTurnNow }: Trials): string | undefined {
  const [nearest] = inVain;
  if (nearest === undefined) return undefined;
  const tried = listed(inVain.map(({ change }) => change.what));
  return [
    inVain.length === 1
      ? `Tried with ${tried}, it does not run either.`
      : `Tried with ${tried}, it does not run either, nor with the two of them that come nearest together.`,
    slowTurnText(`Nearest comes ${changeText(nearest.change)}:`, nearest, slowTurnNow),
  ]
    .join(' ')
    .trim();
}

/** "a wider hose, with supply.hose.bore at 8 mm instead of 6 mm" */
function changeText({ what, settings }: TriedChange): string {
  if (settings.length > MOST_TOLD) return what;
  const told = settings.map(({ path, now, then }) => `${path} at ${then} instead of ${now}`);
  return `${what}, with ${listed(told)}`;
}

const valuesText = (settings: readonly ChangedSetting[]): string =>
  settings.length <= MOST_TOLD ? listed(settings.map(({ then }) => then)) : 'Less of it';

function effectText(
  { speed, brakePower, unaidedShare }: ChangedRunning,
  { unaidedShareNow }: Trials,
): string {
  const power = brakePower > 0 ? `with ${powerText(brakePower)} into the load` : 'with no load to drive';
  const settles = `settles at ${speedText(speed)} ${power}`;
  if (unaidedShare === undefined) return settles;
  const now = unaidedShareNow === undefined ? '' : ` (now from ${shareText(unaidedShareNow)})`;
  return (
    `starts from the position set, ${settles}, and starts by itself from ` +
    `${shareText(unaidedShare)} of the turn${now}`
  );
}

const surplus = ({ torque, load }: SlowTurn): number => torque - load;

/** What the shaft gets and the load takes when it is turned slowly; empty where the change brings the two no nearer. */
function slowTurnText(beginning: string, { slowTurn }: InVain, now: SlowTurn | undefined): string {
  if (slowTurn === undefined || now === undefined || surplus(slowTurn) <= surplus(now)) return '';
  const [brings, sign] = slowTurn.torque < 0 ? ['has to be driven with', -1] : ['brings the shaft', 1];
  return (
    `${beginning} turned slowly, it ${brings} ${withNow(sign * slowTurn.torque, sign * now.torque)}, and the ` +
    `load takes ${withNow(slowTurn.load, now.load)}` +
    (surplus(slowTurn) > 0 ? '; yet it does not get round from the position set.' : '.')
  );
}

/** A torque, and what it is now where that is another. */
const withNow = (torque: number, now: number): string =>
  Math.abs(torque - now) <= SAME * Math.abs(now)
    ? torqueText(torque)
    : `${torqueText(torque)} (now ${torqueText(now)})`;
