/** From a result to what a builder needs to hear: does it run, where do air and work go, what to try, what to mind. */
import { inUnits, unitSystem, type UnitSystem } from '../quantity/unit-system.ts';
import type { RunResult } from '../run/result.ts';
import type { Caution } from './cautions/caution.ts';
import { cautions } from './cautions/registry.ts';
import { headlineOf } from './headline.ts';
import { nextChangeOf } from './next-change/next-change.ts';
import { statementsOf } from './statements.ts';

/** What a result means, in plain sentences. */
export interface Verdict {
  /** One or two sentences: whether it runs and how fast, or why not. */
  readonly headline: string;
  readonly statements: readonly string[];
  /** The change that promises most, as a suggestion. */
  readonly nextChange: string;
  /** Never empty, whether the engine runs or not. */
  readonly cautions: readonly Caution[];
}

/** `units` are those of the sentences. */
export function verdictOf(result: RunResult, units: UnitSystem = unitSystem()): Verdict {
  return inUnits(units, () => ({
    headline: headlineOf(result),
    statements: statementsOf(result),
    nextChange: nextChangeOf(result),
    cautions: cautions.flatMap((caution) => caution(result) ?? []),
  }));
}
