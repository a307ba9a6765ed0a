/** What is measured of ours, each as a user of the library would ask for it. */
import { buildEngine } from '../../src/model/engine.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { settledRunning } from '../../src/run/settled-running.ts';
import { startMap } from '../../src/run/start-map.ts';
import { torqueCurve } from '../../src/run/torque-curve.ts';

const MAP_POSITIONS = 72;

/** From a checked description to the settled turn, the building of the engine included. */
export const ourSettledAnswer = settledRunning;

/** The whole start map, with the torque curve that it needs. */
export function ourStartMap(spec: EngineSpec, settledSpeed: number): void {
  const engine = buildEngine(spec);
  startMap({ engine, settledSpeed, curve: torqueCurve(engine) }, MAP_POSITIONS);
}
