/**
 * The clearance: air that fills it, against work that is spent on squeezing what the exhaust has shut in. Which of the two
 * counts is asked of the loss-free turn; with much compression a smaller clearance stops an engine.
 */
import type { RunResult, SettledCycle } from '../../run/result.ts';
import { gaugeText, shareText } from '../figures.ts';
import { compressedTo, idealTurnOf, prospectOf, type Prospect } from './ideal-turn.ts';
import { prospectText } from './prospect-words.ts';
import type { Suggestion } from './suggestion.ts';

/** By how much a change is tried on the loss-free turn: a fifth of the clearance, a twentieth of the stroke. */
const SMALLER = 0.8;
const LARGER = 1.2;
const EARLIER = 0.05;

/** Work that a change may cost which is to save air. */
const WORK_TO_SPARE = 0.95;

const savesAir = (prospect: Prospect | undefined): prospect is Prospect =>
  prospect !== undefined && prospect.suffices && prospect.work > WORK_TO_SPARE && prospect.airPerWork < 1;

export function fillingOfClearance(cycle: SettledCycle, result: RunResult): Suggestion | undefined {
  const { engine } = result;
  const swept = cycle.profile.ends[0].sweptVolume;
  const smaller = prospectOf(cycle, result, ({ clearance }) => ({ clearance: SMALLER * clearance }));
  const earlier = prospectOf(cycle, result, ({ compression }) => ({
    compression: compression + EARLIER * swept,
  }));
  const worthTrying = [
    { what: 'a smaller clearance volume', tried: 'a fifth less of it', prospect: smaller },
    {
      what: 'an earlier compression',
      tried: 'an exhaust shut a twentieth of the stroke sooner',
      prospect: earlier,
    },
  ].filter((one): one is typeof one & { prospect: Prospect } => savesAir(one.prospect));
  const [first] = worthTrying;
  if (first === undefined) return undefined;
  const share = cycle.air.clearanceShare;
  return {
    share,
    text:
      `Try ${worthTrying.map(({ what }) => what).join(' or ')}: ${shareText(share)} of the air does nothing but fill the clearance, which is ` +
      `${shareText(engine.clearanceVolume / engine.sweptVolume)} of the swept volume.`,
    effect: prospectText(first.tried, first.prospect),
  };
}

export function squeezedClearance(cycle: SettledCycle, result: RunResult): Suggestion | undefined {
  const larger = prospectOf(cycle, result, ({ clearance }) => ({ clearance: LARGER * clearance }));
  // A larger clearance takes more air; it must give at least twice that in work.
  if (larger === undefined || larger.work - 1 < 2 * (larger.airPerWork - 1)) return undefined;
  const { engine } = result;
  const gauge = (pressure: number): string => gaugeText(pressure, engine.atmosphericPressure);
  return {
    share: larger.work - 1,
    text:
      'Try a larger clearance volume, or an exhaust that shuts later: what it shuts in is squeezed to some ' +
      `${gauge(compressedTo(idealTurnOf(cycle, result)))} before the admission opens, where the supply has ` +
      `${gauge(engine.supplyPressure)}, and that takes more work than the clearance costs in air.`,
    effect: prospectText('a clearance a fifth larger', larger),
  };
}
