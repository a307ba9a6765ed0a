/** Settled answers by a law of our own in place of an engine, so that minutes of supply can be checked in no time. */
import type { AnswerOf, SettledRun } from '../../src/run/supply/settled-answer.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';

export interface EngineLaw {
  /** It stops below this supply pressure [Pa]. */
  readonly stall: number;
  /** [rad/s] and [kg/s] at a supply pressure. */
  readonly speed: (pressure: number) => number;
  readonly airMassFlow: (pressure: number) => number;
}

/** Grows slower with less pressure, and has still some speed where it stops. */
export const plainLaw: EngineLaw = {
  stall: 2.2e5,
  speed: (p) => 8 * Math.sqrt(p / 1e5 - 2),
  airMassFlow: (p) => 4e-4 * Math.sqrt(p / 1e5 - 2) * (p / 1e5),
};

const stopped: SettledRun = {
  outcome: { kind: 'stalled', reason: 'It stops.', time: 1, crankAngle: 0, turns: 1 },
};

/** What is in front of the engine: the supply, or the inlet of a regulator that is described. */
export const inFront = ({ supply }: EngineSpec): number =>
  supply.regulator?.inlet_pressure ?? supply.pressure;

/** With every description that was asked about, in order. */
export function answersOf(law: EngineLaw): { readonly answer: AnswerOf; readonly asked: EngineSpec[] } {
  const asked: EngineSpec[] = [];
  const answer: AnswerOf = (spec) => {
    asked.push(spec);
    const pressure = inFront(spec);
    if (pressure < law.stall) return stopped;
    return {
      outcome: { kind: 'settled', reason: 'It settles.', time: 9, crankAngle: 0, turns: 40 },
      settled: { speed: law.speed(pressure), airMassFlow: law.airMassFlow(pressure) },
    };
  };
  return { answer, asked };
}
