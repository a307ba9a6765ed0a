/** States an engine passes through while it turns at some speed, as its integrator steps. */
import { initialState } from '../../src/model/initial-state.ts';
import type { EngineSystem } from '../../src/model/system.ts';
import { engineStepper, QUICK } from '../../src/run/stepper.ts';

const TURN = 2 * Math.PI;
const TURNS_TO_FOLLOW = 3;

export function sampleStates(system: EngineSystem, speed: number): Float64Array[] {
  const y = initialState(system, 0, speed);
  const states: Float64Array[] = [];
  const begin = TURNS_TO_FOLLOW * TURN;
  engineStepper(system, QUICK).inAngle(y, begin + TURN, {
    stepLimit: 1e5,
    onStep: (step) => {
      if (step.from < begin) return;
      const state = new Float64Array(system.dimension);
      step.interpolate(step.to, state);
      states.push(state);
    },
  });
  return states;
}
