/** What an engine can drive and from where it starts: its torque curves, where they meet the load, its start map. */
import { buildEngine, type Engine } from '../model/engine.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import type { Drive, StartMap } from './drive-result.ts';
import { operatingPoints } from './operating-points.ts';
import type { RunResult } from './result.ts';
import { runEngine } from './run-engine.ts';
import { startMap } from './start-map.ts';
import type { SupplyTrace } from './supply/supply-trace.ts';
import { supplyTimeline } from './supply/timeline.ts';
import { torqueCurve, withoutLeaks } from './torque-curve.ts';

/** `settledSpeed` is the one that a run has reached [rad/s]; without it the fastest stable one is started towards. */
export function driveOf(spec: EngineSpec, settledSpeed?: number): Drive {
  const engine = buildEngine(spec);
  const curve = torqueCurve(engine);
  const points = operatingPoints(curve, engine.load);
  const wanted = settledSpeed ?? points.findLast(({ stable }) => stable)?.speed;
  return {
    curve,
    curveWithoutLeaks: torqueCurve(withoutLeaks(engine)),
    load: curve.speed.map((speed) => engine.load.torque(speed)),
    stallTorque: curve.torque[0] ?? 0,
    operatingPoints: points,
    startMap: startMap({ engine, settledSpeed: wanted, curve }),
    ...(servesBothWays(spec, engine) ? { startMapReversed: reversedStarts(spec) } : {}),
  };
}

const servesBothWays = ({ running_direction }: EngineSpec, { ends: [first] }: Engine): boolean =>
  running_direction === 'forward' && first.valveGear.reverse?.serves === true;

function reversedStarts(spec: EngineSpec): StartMap {
  const reversed: EngineSpec = { ...spec, running_direction: 'reverse' };
  const engine = buildEngine(reversed);
  const curve = torqueCurve(engine);
  const settledSpeed = operatingPoints(curve, engine.load).findLast(({ stable }) => stable)?.speed;
  return startMap({ engine, settledSpeed, curve });
}

/** How long the course of the receiver is followed that goes with a run [s]. */
const SUPPLY_TIME = 1800;

function supplyOf(spec: EngineSpec, { settled }: RunResult): SupplyTrace | undefined {
  if (!settled || !spec.compressor) return undefined;
  const timeline = supplyTimeline(spec, spec.compressor, SUPPLY_TIME);
  return timeline.runs ? timeline.trace : undefined;
}

/** A run, and besides it what the engine can drive, how it starts, and what its receiver goes through. */
export function runAndDrive(spec: EngineSpec): RunResult {
  const result = runEngine(spec);
  const supplyTrace = supplyOf(spec, result);
  return {
    ...result,
    drive: driveOf(spec, result.settled?.speed),
    ...(supplyTrace ? { supplyTrace } : {}),
  };
}
