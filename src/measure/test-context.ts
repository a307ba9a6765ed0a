/** What a bench test may know besides its own readings: the air and the room, and the engine if the sheet names one. */
import type { Gas } from '../gas/gas.ts';
import type { Setting } from '../kinds/parameter.ts';
import type { Family } from '../kinds/kind.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import type { Finding } from './finding.ts';

export type EngineReading =
  | { readonly ok: true; readonly spec: EngineSpec }
  /** As a listing for people. */
  | { readonly ok: false; readonly problems: string };

/** The engine of a scenario file, also with some of its values replaced. */
export interface EngineUnderTest {
  readonly file: string;
  readonly spec: EngineSpec;
  readonly with: (settings: readonly Setting[]) => EngineReading;
}

export interface TestContext {
  readonly gas: Gas;
  /** Pressure [Pa] and temperature [K] of the room. */
  readonly atmosphericPressure: number;
  readonly atmosphericTemperature: number;
  readonly engine: EngineUnderTest | undefined;
}

export type BenchTestFamily = Family<TestContext, Finding>;
