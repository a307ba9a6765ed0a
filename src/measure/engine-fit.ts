/**
 * The unknowns of a scenario from what was read beside the running engine, by least squares through the whole model: each
 * reading counts in units of its error.
 */
import type { Setting } from '../kinds/parameter.ts';
import { log } from '../numerics/elementary/logarithm.ts';
import { leastSquares, type LeastSquaresFit } from '../numerics/least-squares.ts';
import { settledAnswer, type RunningConditions, type SettledAnswer } from './settled-answer.ts';
import type { EngineUnderTest } from './test-context.ts';
import { settingsAt, type Unknown } from './unknowns.ts';

/** One state the engine was run in, and what was read there. */
export interface Observation {
  readonly conditions: RunningConditions;
  /** What was changed on the engine besides. */
  readonly changed: readonly Setting[];
  readonly read: Readonly<Partial<Record<keyof SettledAnswer, number>>>;
  /** Standard errors of the readings, in their units. */
  readonly errors: Readonly<Record<keyof SettledAnswer, number>>;
}

export const instruments = [
  'speed',
  'airFlow',
  'exhaustTemperature',
] as const satisfies (keyof SettledAnswer)[];

export interface EngineFit {
  readonly unknowns: readonly Unknown[];
  /** Of the logarithms; behind the readings come the residuals of what was known beforehand. */
  readonly fit: LeastSquaresFit;
  /** What the fitted model shows in each state; `undefined` where it does not run. */
  readonly answers: readonly (SettledAnswer | undefined)[];
}

export type Answers = (logarithms: readonly number[]) => readonly (SettledAnswer | undefined)[];

/** The model in every state, for any values of the unknowns; each is reckoned once. */
function answersOf(
  engine: EngineUnderTest,
  unknowns: readonly Unknown[],
  observations: readonly Observation[],
): Answers {
  const known = new Map<string, SettledAnswer | undefined>();
  return (logarithms) => {
    const own = settingsAt(unknowns, logarithms);
    return observations.map(({ changed, conditions }, i) => {
      const key = [i, ...logarithms].join(' ');
      if (known.has(key)) return known.get(key);
      const reading = engine.with([...changed, ...own]);
      const answer = reading.ok ? settledAnswer(reading.spec, conditions) : undefined;
      known.set(key, answer);
      return answer;
    });
  };
}

/** An engine that does not run although it was seen to shows nothing of what was read: as wrong as it can be. */
const silent: SettledAnswer = { speed: 0, airFlow: 0, exhaustTemperature: 0 };

const residualsOf = (
  observations: readonly Observation[],
  answers: readonly (SettledAnswer | undefined)[],
): number[] =>
  observations.flatMap(({ read, errors }, i) =>
    instruments.flatMap((name) => {
      const value = read[name];
      return value === undefined ? [] : [((answers[i] ?? silent)[name] - value) / errors[name]];
    }),
  );

/** What was known of the logarithms before: means and standard deviations. */
export interface Beforehand {
  readonly means: readonly number[];
  readonly deviations: readonly number[];
}

/** Settled speeds repeat themselves to some 1 in 10 000; derivatives want steps far above that. */
const STEP = 0.05;
/** Of χ²: less than that is neither here nor there, and more than the model's own rounding. */
const LEAST_GAIN = 0.02;
/** A hundredfold either way is no guess any more. */
const FAR = log(100);

export function engineFit(
  engine: EngineUnderTest,
  unknowns: readonly Unknown[],
  observations: readonly Observation[],
  beforehand?: Beforehand,
): EngineFit {
  const answers = answersOf(engine, unknowns, observations);
  const start = beforehand?.means ?? unknowns.map(() => 0);
  const prior = (p: readonly number[]): number[] =>
    beforehand === undefined
      ? []
      : p.map((value, i) => (value - beforehand.means[i]!) / beforehand.deviations[i]!);
  const fit = leastSquares({
    start,
    difference: STEP,
    lower: unknowns.map(() => -FAR),
    upper: unknowns.map(() => FAR),
    mostIterations: 12,
    leastGain: LEAST_GAIN,
    residuals: (p) => [...residualsOf(observations, answers(p)), ...prior(p)],
  });
  return { unknowns, fit, answers: answers(fit.parameters) };
}
