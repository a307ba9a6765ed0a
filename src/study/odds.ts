/**
 * The odds of an engine as built: every size that has a tolerance strays at random, and engine after engine is asked
 * whether it meets the conditions. Where a study varies something besides, each of its engines gets the same luck in the
 * workshop, so that their odds can be compared.
 */
import { readNumber } from '../quantity/number.ts';
import type { SettingText } from './aims/aim.ts';
import type { Ask } from './ask.ts';
import { worstMargin, type Condition } from './conditions/condition.ts';
import { runs, type EngineAnswer } from './engine-answer.ts';
import type { MeasureName } from './measures.ts';
import { settingsAt, type Plan } from './plan.ts';
import { randomFrom } from './random.ts';
import { distribution, quantiles, rankCorrelation, share, type Quantiles, type Share } from './statistics.ts';
import type { Nominal, Tolerance } from './tolerances/tolerance.ts';

/** What strays, and what has to hold. */
export interface OddsTask {
  readonly plan: Plan;
  readonly tolerances: readonly Tolerance[];
  readonly conditions: readonly Condition[];
  readonly engines: number;
  readonly seed: number;
  /** What stands at a path of the scenario, with the values of a point of the plan. */
  readonly nominal: (settings: readonly SettingText[], path: string) => Nominal;
}

/** An engine as it was built. */
export interface Built {
  /** Number of its point in the plan, and of the engine of that point, both from 0. */
  readonly point: number;
  readonly engine: number;
  readonly texts: readonly string[];
  readonly answer: EngineAnswer;
  readonly holds: boolean;
}

export interface Influence {
  readonly tolerance: Tolerance;
  /** Rank correlation of the size with how well the worst condition is met, and with the speed. */
  readonly withMargin: number;
  readonly withSpeed: number;
}

/** The odds at one point of the plan. */
export interface OddsAt {
  /** Values of the point of the plan. */
  readonly texts: readonly string[];
  readonly runs: Share;
  readonly holds: Share;
  /** One for each condition. */
  readonly conditions: readonly Share[];
  /** Of the engines that run. */
  readonly spread: Readonly<Partial<Record<MeasureName, Quantiles>>>;
  /** Speeds [rad/s] that 0 %, 2.5 %, 5 % … 100 % of those that run stay below; empty if none runs. */
  readonly speeds: readonly number[];
  /** What matters most first. */
  readonly influences: readonly Influence[];
}

/** Engines asked about at once. */
const BATCH = 64;

/** Builds engines on paper, each a little off, and counts those that do as they should. */
export async function oddsOf(
  task: OddsTask,
  ask: Ask,
  note: (built: Built) => void = () => undefined,
): Promise<readonly OddsAt[]> {
  const found: OddsAt[] = [];
  for (let point = 0; point < task.plan.count; point += 1) found.push(await oddsAt(task, point, ask, note));
  return found;
}

async function oddsAt(
  task: OddsTask,
  point: number,
  ask: Ask,
  note: (built: Built) => void,
): Promise<OddsAt> {
  const texts = task.plan.point(point);
  const settings = settingsAt(task.plan.variations, texts);
  const random = randomFrom(task.seed);
  const sizes: number[][] = task.tolerances.map(() => []);
  const margins: number[] = [];
  const answers: EngineAnswer[] = [];
  while (answers.length < task.engines) {
    const size = Math.min(BATCH, task.engines - answers.length);
    const built = Array.from({ length: size }, () => asBuilt(task, settings, random));
    const batch = await ask(built.map((own) => [...settings, ...own]));
    batch.forEach((answer, i) => {
      const own = built[i]!;
      own.forEach(({ value }, k) => sizes[k]!.push(numberIn(value)));
      const margin = worstMargin(task.conditions, answer);
      note({
        point,
        engine: answers.length,
        texts: [...texts, ...own.map(({ value }) => value)],
        answer,
        holds: margin >= 0,
      });
      margins.push(margin);
      answers.push(answer);
    });
  }
  return { texts, ...summary(task, answers, margins), influences: influences(task, sizes, margins, answers) };
}

function asBuilt(task: OddsTask, settings: readonly SettingText[], random: () => number): SettingText[] {
  return task.tolerances.map((tolerance) => {
    const strayed = tolerance.stray(task.nominal(settings, tolerance.path), random);
    if (!strayed.ok) throw new Error(`${tolerance.path}: a tolerance was not checked`);
    return { path: tolerance.path, value: strayed.text };
  });
}

const numberIn = (text: string): number => {
  const number = readNumber(text, '');
  return number.ok ? number.value : NaN;
};

function summary(
  { conditions }: OddsTask,
  answers: readonly EngineAnswer[],
  margins: readonly number[],
): Pick<OddsAt, 'runs' | 'holds' | 'conditions' | 'spread' | 'speeds'> {
  const count = (holds: (answer: EngineAnswer, i: number) => boolean): Share =>
    share(answers.filter(holds).length, answers.length);
  const running = answers.filter(runs);
  const spreadOf = (name: MeasureName): readonly (readonly [MeasureName, Quantiles])[] => {
    const found = quantiles(running.flatMap(({ values }) => values[name] ?? []));
    return found === undefined ? [] : [[name, found]];
  };
  const names: readonly MeasureName[] = [
    'speed',
    'power',
    'air',
    'leakShare',
    'startShare',
    'compressorDuty',
    'lasts',
  ];
  return {
    runs: count(runs),
    holds: count((_, i) => margins[i]! >= 0),
    conditions: conditions.map((condition) =>
      count((answer) => runs(answer) && condition.margin(answer) >= 0),
    ),
    spread: Object.fromEntries(names.flatMap(spreadOf)),
    speeds: distribution(running.flatMap(({ values }) => values.speed ?? [])),
  };
}

function influences(
  { tolerances }: OddsTask,
  sizes: readonly (readonly number[])[],
  margins: readonly number[],
  answers: readonly EngineAnswer[],
): Influence[] {
  const speeds = answers.map(({ values }) => values.speed ?? 0);
  const found = tolerances.map((tolerance, i) => ({
    tolerance,
    withMargin: rankCorrelation(sizes[i]!, margins),
    withSpeed: rankCorrelation(sizes[i]!, speeds),
  }));
  const strength = ({ withMargin, withSpeed }: Influence): number =>
    Math.max(Math.abs(withMargin), Math.abs(withSpeed));
  return found.sort((a, b) => strength(b) - strength(a));
}
