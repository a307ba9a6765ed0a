/**
 * The settled answer, quickly: does the engine get going from its start, and how does it run then? For sweeps, searches
 * and curves; `runEngine` tells the whole story of one engine.
 */
import { buildEngine } from '../model/engine.ts';
import { initialState } from '../model/initial-state.ts';
import { engineSystem, type EngineSystem } from '../model/system.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { measureTurn } from './measured-turn.ts';
import { motionFrom, nextMilestone, type Motion } from './motion.ts';
import type { Outcome } from './outcome.ts';
import { outcomeOf } from './outcome-words.ts';
import type { Counters, SettledTurn } from './result.ts';
import { settleByRoot, type Closeness } from './settled-root.ts';
import { settledTurn } from './settled-cycle.ts';
import { engineStepper, QUICK } from './stepper.ts';
import { traceRecorder } from './trace-recorder.ts';

const CLOSE: Closeness = { speed: 2e-4, gas: 1e-3 };

export interface SettledAnswer {
  readonly outcome: Outcome;
  /** Only for an engine that settles. */
  readonly settled?: SettledTurn;
  readonly counters: Counters;
}
void CLOSE;
void buildEngine;
void initialState;
void measureTurn;
void nextMilestone;
void outcomeOf;
void settledTurn;
void engineStepper;
void QUICK;
void traceRecorder;
void settleByRoot;
void motionFrom;
void engineSystem;
export type Later = [EngineSystem, EngineSpec, Motion];
