/** What a practical step of each value does to the engine: to its speed, to where it starts and to the air it takes. */
import type { LeafParameter } from '../kinds/parameter.ts';
import type { Ask } from './ask.ts';
import { runs, type EngineAnswer } from './engine-answer.ts';
import { practicalSteps } from './practical-step.ts';

/** A value that the scenario gives. */
export interface GivenSetting {
  readonly path: string;
  readonly text: string;
  readonly parameter: LeafParameter;
}

export interface Change {
  readonly setting: GivenSetting;
  readonly to: string;
  readonly way: 'down' | 'up' | 'other';
  readonly answer: EngineAnswer;
  readonly effect: Effect;
}

/** Differences from the engine as it is; `undefined` where one of the two has no such figure. */
export interface Effect {
  /** As a share of the speed there was; of an engine that did not run, 1 when it runs now. */
  readonly speed: number;
  /** Share of positions more from which it starts. */
  readonly starts?: number;
  /** Air for its work, as a share of what it was. */
  readonly airPerWork?: number;
}

/** The engine as it is, and what each step does to it. */
export interface NextChanges {
  readonly now: EngineAnswer;
  /** The largest effect on the speed first. */
  readonly changes: readonly Change[];
}

/** Parts of a scenario that a builder can change; room, start and load are as they are. */
const CHANGEABLE = ['cylinder', 'flywheel', 'friction', 'valve_gear', 'leaks', 'supply'];

/** Whether a value is one that a builder can change. */
export const changeable = ({ path }: GivenSetting): boolean => CHANGEABLE.includes(path.split('.')[0] ?? '');

/** Tries one practical step of each value, both ways. */
export async function nextChanges(settings: readonly GivenSetting[], ask: Ask): Promise<NextChanges> {
  const steps = settings.flatMap((setting) => {
    const { down, up, others } = practicalSteps(setting.text, setting.parameter);
    const ways: readonly (readonly [Change['way'], string | undefined])[] = [
      ['down', down],
      ['up', up],
      ...others.map((other) => ['other', other] as const),
    ];
    return ways.flatMap(([way, to]) => (to === undefined ? [] : [{ setting, way, to }]));
  });
  const [now, ...answers] = await ask([
    [],
    ...steps.map(({ setting, to }) => [{ path: setting.path, value: to }]),
  ]);
  const changes = steps.map((step, i) => ({
    ...step,
    answer: answers[i]!,
    effect: effectOf(now!, answers[i]!),
  }));
  const possible = changes.filter(({ answer }) => answer.outcome !== 'impossible');
  return { now: now!, changes: possible.sort((a, b) => weight(b) - weight(a)) };
}

/** A step after which the engine does not run is none to take, however much it changes. */
const weight = ({ answer, effect }: Change): number => (runs(answer) ? Math.abs(effect.speed) : 0);

function effectOf(now: EngineAnswer, then: EngineAnswer): Effect {
  const [before, after] = [now.values, then.values];
  return {
    speed: speedEffect(now, then),
    ...(before.startShare === undefined || after.startShare === undefined
      ? {}
      : { starts: after.startShare - before.startShare }),
    ...(before.airPerWork === undefined || after.airPerWork === undefined
      ? {}
      : { airPerWork: after.airPerWork / before.airPerWork - 1 }),
  };
}

function speedEffect(now: EngineAnswer, then: EngineAnswer): number {
  if (!runs(now)) return runs(then) ? 1 : 0;
  return (then.values.speed ?? 0) / (now.values.speed ?? 1) - 1;
}
