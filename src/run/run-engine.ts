/** One engine from rest to its verdict: the main job. */
import { buildEngine, type Engine, type WorkingEnd } from '../model/engine.ts';
import { initialState } from '../model/initial-state.ts';
import { ledgerResiduals } from '../model/ledger.ts';
import { SLOT } from '../model/slots.ts';
import { engineSystem } from '../model/system.ts';
import { barrelMaterial } from '../parts/barrel-materials.ts';
import { strokeFraction } from '../parts/crank-train.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { compressorVerdict } from './compressor-verdict.ts';
import { measureCycle, type MeasuredCycle } from './cycle.ts';
import { moistureOf } from './moisture.ts';
import type { TurnFailure } from './one-turn.ts';
import { failedTurn } from './failed-turn.ts';
import { motionFrom } from './motion.ts';
import { outcomeOf } from './outcome-words.ts';
import type { EndFacts, EngineFacts, LedgerResiduals, RunResult } from './result.ts';
import { settle } from './settle.ts';
import { settledCycle } from './settled-cycle.ts';
import { standStill } from './stand-still.ts';
import { engineStepper, FINE, FOLLOWING } from './stepper.ts';
import { traceRecorder } from './trace-recorder.ts';

const TURN = 2 * Math.PI;
const LOAD_CURVE_POINTS = 61;

function loadCurve(engine: Engine, topSpeed: number): EngineFacts['loadCurve'] {
  const speed = Float64Array.from(
    { length: LOAD_CURVE_POINTS },
    (_, i) => (topSpeed * i) / (LOAD_CURVE_POINTS - 1),
  );
  return { speed, torque: speed.map((at) => engine.load.torque(at)) };
}

type AirFacts = Pick<
  EngineFacts,
  | 'gas'
  | 'atmosphericPressure'
  | 'atmosphericTemperature'
  | 'relativeHumidity'
  | 'supplyPressure'
  | 'regulatorInlet'
>;

function airFacts({ atmosphere, supply }: EngineSpec, { gas }: Engine): AirFacts {
  const { name, origin, heatCapacityRatio, criticalPressureRatio } = gas;
  return {
    gas: { name, origin, heatCapacityRatio, criticalPressureRatio },
    atmosphericPressure: atmosphere.pressure,
    atmosphericTemperature: atmosphere.temperature,
    relativeHumidity: atmosphere.relative_humidity,
    supplyPressure: supply.pressure,
    ...(supply.regulator ? { regulatorInlet: supply.regulator.inlet_pressure } : {}),
  };
}

/** What has to hold the pressure, as far as it is described. */
function strengthFacts({ supply, cylinder }: EngineSpec): Pick<EngineFacts, 'ratedPressure' | 'barrel'> {
  const { material, wall_thickness } = cylinder;
  return {
    ratedPressure: supply.rated_pressure,
    barrel: { material: material && barrelMaterial(material), wallThickness: wall_thickness },
  };
}

/** Sizes of the first cylinder's gear; those of a double-acting one differ from end to end. */
function derivedSizes({ ends }: Engine): EngineFacts['derivedSizes'] {
  const own = ends.filter(({ cylinder }) => cylinder === 0);
  return own.flatMap(({ side, valveGear }) =>
    valveGear.derivedSizes.map((size) =>
      own.length === 1 ? size : { ...size, label: `${side} end: ${size.label}` },
    ),
  );
}

function endFacts({ name, deadCentre, valveGear }: WorkingEnd): EndFacts {
  return { name, deadCentre, events: valveGear.events };
}

function engineFacts(spec: EngineSpec, engine: Engine, topSpeed: number): EngineFacts {
  const [first, ...others] = engine.ends;
  const { events } = first.valveGear;
  return {
    valveGearKind: spec.valve_gear.kind,
    ...(spec.running_direction === 'reverse' ? { reverse: { gearServes: first.gearServes } } : {}),
    ...airFacts(spec, engine),
    ...strengthFacts(spec),
    chestVolume: engine.volumes.reduce((sum, { fixedVolume }) => sum + (fixedVolume ?? 0), 0),
    clearanceVolume: engine.ends.reduce((sum, { clearanceVolume }) => sum + clearanceVolume, 0),
    sweptVolume: engine.sweptVolume,
    bore: spec.cylinder.bore,
    stroke: spec.cylinder.stroke,
    rodLength: spec.cylinder.rod_length,
    momentOfInertia: engine.flywheel.momentOfInertia,
    ...(engine.flywheel.rim ? { flywheelRim: engine.flywheel.rim } : {}),
    ...(spec.compressor
      ? { receiver: { volume: spec.compressor.receiver_volume, pressure: spec.compressor.cut_out } }
      : {}),
    ends: [endFacts(first), ...others.map(endFacts)],
    events,
    cutOffFraction: strokeFraction(engine.crank, events.cutOff),
    derivedSizes: derivedSizes(engine),
    loadCurve: loadCurve(engine, topSpeed),
  };
}

const worse = (a: LedgerResiduals, b: LedgerResiduals): LedgerResiduals => ({
  mass: Math.max(a.mass, b.mass),
  energy: Math.max(a.energy, b.energy),
});

/** Only a turn that gave up on its way has a reason. */
const gaveUp = (turn: MeasuredCycle | TurnFailure): turn is TurnFailure => 'reason' in turn;

/** Runs a description that has passed its checks. Never throws for an engine that does not run. */
export function runEngine(spec: EngineSpec): RunResult {
  const engine = buildEngine(spec);
  const system = engineSystem(engine);
  const stepper = engineStepper(system, FOLLOWING);
  const fine = engineStepper(system, FINE);
  const recorder = traceRecorder(system);
  const start = initialState(system, spec.start.crank_angle, spec.start.hand_speed);
  const y = start.slice();
  recorder.note((i) => y[i]!);
  const motion = motionFrom({ system, stepper, recorder, y, longestTime: spec.run.longest_time });
  const { end, spunUp } = settle(motion);
  const turn = end.kind === 'settled' ? measureCycle(system, fine, y) : undefined;
  const measured = turn && !gaveUp(turn) ? turn : undefined;
  const settled = measured && settledCycle(system, measured);
  const outcome = outcomeOf(motion, turn && gaveUp(turn) ? failedTurn(turn) : end, settled?.speed);
  const spinUpResiduals = ledgerResiduals(system, start, spunUp, stepper.counters.acceptedSteps);
  const { compressor } = spec;
  const moisture = settled && moistureOf(spec, settled.airMassFlow);
  return {
    title: spec.title,
    notes: spec.notes,
    outcome,
    trace: recorder.finish(spunUp),
    ...(settled ? { settled } : {}),
    ...(y[SLOT.speed] === 0 ? { standStill: standStill(system, y) } : {}),
    ...(settled && compressor
      ? { compressor: compressorVerdict(compressor, spec, settled.airMassFlow) }
      : {}),
    ...(moisture ? { moisture } : {}),
    ledger: measured ? worse(spinUpResiduals, measured.residuals) : spinUpResiduals,
    counters: {
      derivativeCalls: stepper.counters.derivativeCalls + fine.counters.derivativeCalls,
      acceptedSteps: stepper.counters.acceptedSteps + fine.counters.acceptedSteps,
      turns: Math.max(0, Math.floor((y[SLOT.crankAngle]! - spec.start.crank_angle) / TURN)),
    },
    engine: engineFacts(spec, engine, 2 * (settled?.speed ?? 60)),
  };
}
