/** A cause of an engine that will not run, and what speaks for it. */
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { RunResult } from '../../run/result.ts';
import type { DeadStretch, Standing } from './rest-scan.ts';
import type { Symptom } from './symptoms.ts';

/** Everything the model can say about the engine, gathered once. */
export interface Evidence {
  readonly symptom: Symptom;
  readonly spec: EngineSpec;
  /** As the scenario starts it. */
  readonly result: RunResult;
  readonly scan: readonly Standing[];
  readonly stretch: DeadStretch | undefined;
  /** Where it stops, or stands, on the bench; the place where the air falls shortest if that was not said. */
  readonly place: Standing;
  /** Moment of inertia [kg m²]. */
  readonly inertia: number;
}

export interface Suspect {
  readonly cause: string;
  /** How much of what was seen it could account for, from 0 to 1; orders the causes and promises nothing. */
  readonly weight: number;
  /** The number behind it, as a sentence. */
  readonly number: string;
  /** The test that would confirm it, as a sentence. */
  readonly test: string;
}

export interface Cause {
  readonly symptoms: readonly Symptom[];
  /** None when the scenario gives no reason to suspect it. */
  readonly suspects: (evidence: Evidence) => readonly Suspect[];
}
