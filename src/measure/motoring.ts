/**
 * The engine turned over with its chest open to the room, by the model: what pumping air in and out costs at a speed, and
 * what the scenario already ascribes to piston and valve gear. The wheel is made so heavy that the speed stays what it is.
 */
import { buildEngine } from '../model/engine.ts';
import { initialState } from '../model/initial-state.ts';
import { engineSystem, type EngineSystem } from '../model/system.ts';
import type { EngineSpec } from '../parts/engine-description.ts';
import { givenFlywheel } from '../parts/flywheels/given.ts';
import { constantLoad } from '../parts/loads/constant.ts';
import { measureCycle } from '../run/cycle.ts';
import { engineStepper } from '../run/stepper.ts';

export interface Room {
  readonly pressure: number;
  readonly temperature: number;
}

/** Mean torques of a turn [N m], all of them resisting when positive. */
export interface MotoringTorques {
  readonly pumping: number;
  readonly piston: number;
  readonly valveGear: number;
}

const HEAVY = 1e4;
/** Turns until the air in chest and cylinder repeats itself. */
const TURNS = 4;

/** As it stands on the bench: hose off, no load. */
function opened(spec: EngineSpec, { pressure, temperature }: Room): EngineSpec {
  const { bore } = spec.supply.hose;
  return {
    ...spec,
    atmosphere: { ...spec.atmosphere, pressure, temperature },
    supply: {
      ...spec.supply,
      pressure,
      temperature,
      regulator: undefined,
      hose: { ...spec.supply.hose, bore, length: 0.01, fitting_bore: undefined },
    },
    load: constantLoad.choose({ torque: 0 }),
  };
}

/** Torques at each speed [rad/s] above zero; `undefined` when the model gives up on a turn. */
export function motoringTorques(
  spec: EngineSpec,
  room: Room,
  speeds: readonly number[],
): readonly MotoringTorques[] | undefined {
  const heavy = { ...opened(spec, room), flywheel: givenFlywheel.choose({ moment_of_inertia: HEAVY }) };
  const system = engineSystem(buildEngine(heavy));
  const torques = speeds.map((speed) => torquesAt(system, speed));
  return torques.every((own) => own !== undefined) ? torques : undefined;
}

function torquesAt(system: EngineSystem, speed: number): MotoringTorques | undefined {
  const stepper = engineStepper(system);
  const { slots } = system;
  let y = initialState(system, 0, speed);
  for (let turn = 0; turn < TURNS; turn += 1) {
    const cycle = measureCycle(system, stepper, y);
    if ('reason' in cycle) return undefined;
    y = cycle.after;
  }
  const mean = (slot: number): number => y[slot]! / (2 * Math.PI);
  return { pumping: -mean(slots.gasWork), piston: mean(slots.pistonWork), valveGear: mean(slots.gearWork) };
}

/** Mean moment of inertia over a turn [kg m²]: the wheel, and the pistons as far as they go along. */
export function meanInertia(spec: EngineSpec): number {
  const system = engineSystem(buildEngine(spec));
  const steps = 72;
  const moments = Array.from({ length: steps }, (_, i) => system.momentOfInertia((2 * Math.PI * i) / steps));
  return moments.reduce((a, b) => a + b) / steps;
}
