/**
 * The answer of one engine to everything a study asks; plain data, for it travels between threads. This is the one place
 * that knows how an engine is brought to its settled turn.
 */
import type { EngineSpec } from '../parts/engine-description.ts';
import { compressorVerdict } from '../run/compressor-verdict.ts';
import type { OutcomeKind } from '../run/outcome.ts';
import { settledRunning } from '../run/settled-running.ts';
import { measured, type Measured } from './measures.ts';

export type AnswerOutcome =
  | OutcomeKind
  /** Each value by itself could be; together they make no engine. */
  | 'impossible'
  /** The program broke off; a fault of ours. */
  | 'broken-off';

export interface EngineAnswer {
  readonly outcome: AnswerOutcome;
  /** A plain sentence. */
  readonly reason: string;
  readonly values: Measured;
}

export interface Wanted {
  /** Whether to try from how many crank positions the engine starts unaided. */
  readonly starts: boolean;
}

export function engineAnswer(spec: EngineSpec, wanted: Wanted): EngineAnswer {
  const { outcome, settled } = settledRunning(spec);
  const { compressor } = spec;
  const known = {
    ...(settled ? { settled } : {}),
    ...(settled && compressor
      ? { compressor: compressorVerdict(compressor, spec, settled.airMassFlow) }
      : {}),
    ...(wanted.starts ? { startShare: startShare(spec) } : {}),
  };
  return { outcome: outcome.kind, reason: outcome.reason, values: measured(known) };
}

export const impossible = (reason: string): EngineAnswer => ({ outcome: 'impossible', reason, values: {} });

export const brokenOff = (reason: string): EngineAnswer => ({ outcome: 'broken-off', reason, values: {} });

export const runs = ({ outcome }: EngineAnswer): boolean => outcome === 'settled';

const POSITIONS = 24;

/** Share of crank positions, evenly round the turn, from which the engine gets going by itself. */
function startShare(spec: EngineSpec): number {
  const started = Array.from({ length: POSITIONS }, (_, i) => {
    const start = { crank_angle: (2 * Math.PI * i) / POSITIONS, hand_speed: 0 };
    return settledRunning({ ...spec, start }).outcome.kind === 'settled';
  });
  return started.filter(Boolean).length / POSITIONS;
}
