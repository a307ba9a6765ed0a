/** One entry of the notebook: what was changed, and what came of it. Changes stay until they are changed again. */
import type { Family } from '../../kinds/kind.ts';
import type { Setting } from '../../kinds/parameter.ts';
import type { Observation } from '../engine-fit.ts';

interface Entry {
  readonly what: string;
  readonly when: string;
  readonly changed: readonly Setting[];
}

/** It ran steadily and was read. */
export interface RanAttempt extends Entry {
  readonly happened: 'ran';
  readonly conditions: Observation['conditions'];
  readonly read: Observation['read'];
  readonly errors: Observation['errors'];
  /** Speed that was foretold at the time, if it was written down [rad/s]. */
  readonly foretold: number | undefined;
}

export interface StoodAttempt extends Entry {
  readonly happened: 'did not run';
  readonly conditions: Pick<Observation['conditions'], 'supplyPressure'>;
}

/** A bench test found values of the scenario. */
export interface MeasuredAttempt extends Entry {
  readonly happened: 'measured';
  readonly found: readonly Setting[];
  /** Half the 95 % interval, as a share. */
  readonly within: number;
}

export type Attempt = RanAttempt | StoodAttempt | MeasuredAttempt;

export type AttemptFamily = Family<unknown, Attempt>;
