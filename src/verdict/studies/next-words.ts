/** What a step of each value does, a sentence each. */
import type { EngineAnswer } from '../../study/engine-answer.ts';
import type { Change, NextChanges } from '../../study/next-changes.ts';
import { shareText, speedText } from '../figures.ts';
import { listed, measureRows, moreOrLess, rpmDifference } from './measure-words.ts';
import type { StudyWords } from './study-words.ts';

/** Less than this is no effect that anyone would notice. */
const NOTICED = 0.002;

export interface NextWords extends StudyWords {
  /** Values that change next to nothing. */
  readonly without: readonly string[];
}

/** What a step of each value does, in words. */
export function nextWords({ now, changes }: NextChanges): NextWords {
  const bySetting = [...new Map(changes.map((own) => [own.setting.path, own.setting])).values()];
  const described = bySetting.map((setting) => ({
    setting,
    changes: changes.filter((own) => own.setting.path === setting.path && noticed(own)),
  }));
  const worth = described.filter((own) => own.changes.length > 0);
  const best = changes
    .filter(({ effect }) => effect.speed > NOTICED)
    .sort((a, b) => b.effect.speed - a.effect.speed)[0];
  return {
    headline: headline(now, best),
    good: now.outcome === 'settled',
    statements: worth.map(
      (own) =>
        `${own.setting.path}, now ${own.setting.text}: ${own.changes.map((change) => sentence(now, change)).join('; ')}.`,
    ),
    figures: measureRows(now.values),
    without: described.filter((own) => own.changes.length === 0).map(({ setting }) => setting.path),
  };
}

const noticed = ({ effect }: Change): boolean =>
  [effect.speed, effect.starts ?? 0, effect.airPerWork ?? 0].some((own) => Math.abs(own) > NOTICED);

function headline(now: EngineAnswer, best: Change | undefined): string {
  const is =
    now.outcome === 'settled'
      ? `It runs at ${speedText(now.values.speed ?? NaN)} now.`
      : `It does not run now: ${now.reason}`;
  if (best === undefined) return `${is} No single step makes it faster.`;
  const { setting, to, effect, answer } = best;
  const gain =
    now.outcome === 'settled'
      ? moreOrLess(effect.speed, 'faster', 'slower')
      : `and it runs, at ${speedText(answer.values.speed ?? NaN)}`;
  return `${is} What does most for the speed: ${setting.path} at ${to} instead of ${setting.text}, ${gain}.`;
}

function sentence(now: EngineAnswer, { to, effect, answer }: Change): string {
  if (answer.outcome !== 'settled') return `at ${to}, it does not run`;
  const speed =
    now.outcome !== 'settled'
      ? [`it runs at ${speedText(answer.values.speed ?? NaN)}`]
      : Math.abs(effect.speed) <= NOTICED
        ? []
        : [
            `${rpmDifference((answer.values.speed ?? 0) - (now.values.speed ?? 0))} ${effect.speed < 0 ? 'slower' : 'faster'}`,
          ];
  const air =
    effect.airPerWork === undefined || Math.abs(effect.airPerWork) <= NOTICED
      ? []
      : [`${moreOrLess(effect.airPerWork)} air for its work`];
  return `at ${to}, ${listed([...speed, ...startWords(now, answer), ...air])}`;
}

function startWords(now: EngineAnswer, then: EngineAnswer): string[] {
  const [before, after] = [now.values.startShare, then.values.startShare];
  if (before === undefined || after === undefined || Math.abs(after - before) <= NOTICED) return [];
  return [`a start from ${shareText(after)} of positions instead of ${shareText(before)}`];
}

export const effectText = (share: number): string => `${share > 0 ? '+' : ''}${shareText(share)}`;
