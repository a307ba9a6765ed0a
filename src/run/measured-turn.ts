/** Takes the measure of one turn: what its ledgers add up to, and the state of each cylinder end at its valve events. */
import { ledgerResiduals, resetTotals, type Residuals } from '../model/ledger.ts';
import { FIRST_VOLUME, type WorkingEnd } from '../model/engine.ts';
import type { EngineSystem } from '../model/system.ts';
import { sin } from '../numerics/elementary/trigonometric.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import { oneTurn, type TurnFailure, type Watcher } from './one-turn.ts';
import type { Stepper } from './stepper.ts';

/** State of the cylinder at a valve event. */
export interface EventState {
  /** Where the turn stopped for it, as the crank angle since top dead centre. */
  readonly stop: number;
  readonly mass: number;
  readonly volume: number;
}

export interface MeasuredTurn {
  readonly before: Float64Array;
  readonly after: Float64Array;
  readonly residuals: Residuals;
  /** Net mass [kg] through each passage. */
  readonly passageMass: readonly number[];
  /** For each working end, its state as its admission opens and as it shuts. */
  readonly ends: readonly { readonly atAdmission: EventState; readonly atCutOff: EventState }[];
}

/** Copies of the state by the stops of one turn. */
type Stops = ReadonlyMap<number, Float64Array>;

/** The state of an end at the edge nearest to one of its valve events; events are edges by the gear's contract. */
function eventState(system: EngineSystem, stops: Stops, end: WorkingEnd, event: number): EventState {
  const wanted = wrappedAngle(event + end.deadCentre);
  const distance = (edge: number): number => Math.abs(sin((edge - wanted) / 2));
  const nearest = [...stops.keys()].reduce((best, edge) => (distance(edge) < distance(best) ? edge : best));
  const y = stops.get(nearest)!;
  const volume = system.observe(y).endVolume[system.engine.ends.indexOf(end)]!;
  return { stop: nearest, mass: y[system.slots.mass(end.place - FIRST_VOLUME)]!, volume };
}

/** Measures the turn that begins at `start`, a state at top dead centre that turns forward. */
export function measureTurn(
  system: EngineSystem,
  stepper: Stepper,
  start: Float64Array,
  { onStop: watchStop, ...others }: Watcher = {},
): MeasuredTurn | TurnFailure {
  const before = start.slice();
  resetTotals(system, before);
  const y = before.slice();
  const stops = new Map([[0, before]]);
  const onStop = (stop: number): void => {
    stops.set(stop, y.slice());
    watchStop?.(stop);
  };
  const stepsBefore = stepper.counters.acceptedSteps;
  const failure = oneTurn(stepper, y, { ...others, onStop });
  if (failure) return failure;
  return {
    before,
    after: y,
    residuals: ledgerResiduals(system, before, y, stepper.counters.acceptedSteps - stepsBefore),
    passageMass: system.engine.passages.map((_, i) => y[system.slots.passageMass(i)]!),
    ends: system.engine.ends.map((end) => {
      const { admission, cutOff } = end.valveGear.events;
      return {
        atAdmission: eventState(system, stops, end, admission),
        atCutOff: eventState(system, stops, end, cutOff),
      };
    }),
  };
}
