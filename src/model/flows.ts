/**
 * What goes through the passages of an engine, all of them in one flat pass.
 *
 * The same as each passage's own `massFlow`, but how far a passage is open is asked once per crank angle and speed and then
 * kept for any pressures, and the flow laws are called directly: calls of functions unknown to the compiler hand over
 * numbers by way of the heap.
 */
import { conductanceFlow, type Conductance } from '../gas/conductance.ts';
import { gapFlow } from '../gas/gap.ts';
import { nozzleFlow } from '../gas/nozzle.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { AreaLaw, Flow } from '../parts/passage.ts';
import type { Engine } from './engine.ts';
import type { Instant } from './instant.ts';

export interface Flows {
  /** How far all passages are open at a crank angle [rad] and a speed ≥ 0 [rad/s]; before any flow is asked for. */
  setOpenings(angle: number, speed: number): void;
  /** Writes mass [kg/s] and enthalpy flows [W] of all passages, at the pressures and temperatures of the instant. */
  setFlows(): void;
  /** Mass flow [kg/s] of one passage by its number. */
  massFlow(index: number): number;
}

/** Laws by number, a passage's own function first. */
const OWN = 0;
const LAW = { nozzle: 1, gap: 2, element: 3 } as const satisfies Record<Flow['law'], number>;

const NO_ELEMENT: Conductance = { sonicConductance: 0, criticalPressureRatio: 0 };

interface Moving {
  readonly index: number;
  readonly lag: number;
  readonly opening: AreaLaw;
}

export function flows(engine: Engine, instant: Instant): Flows {
  const { gas, passages } = engine;
  const { pressure, temperature, massFlow, enthalpyFlow } = instant;
  const cp = gas.heatCapacityAtConstantPressure;
  const all = passages.map(({ passage }) => passage.flow);
  const from = Uint8Array.from(passages, (passage) => passage.from);
  const to = Uint8Array.from(passages, (passage) => passage.to);
  const laws = Uint8Array.from(all, (flow) => (flow ? LAW[flow.law] : OWN));
  const sections = Float64Array.from(all, (flow) => (flow?.law === 'gap' ? flow.section : 0));
  const elements = all.map((flow) => (flow?.law === 'element' ? flow.element : NO_ELEMENT));
  const openings = Float64Array.from(all, (flow) => (typeof flow?.opening === 'number' ? flow.opening : 0));
  const moving = passages.flatMap(({ lag, passage: { flow } }, index): Moving[] =>
    flow && typeof flow.opening !== 'number' ? [{ index, lag, opening: flow.opening }] : [],
  );
  const now = { angle: 0, speed: 0 };

  const ownFlow = (i: number): number => {
    const { lag, passage } = passages[i]!;
    const a = from[i]!;
    const b = to[i]!;
    return passage.massFlow(
      now.angle - lag,
      pressure[a]!,
      temperature[a]!,
      pressure[b]!,
      temperature[b]!,
      now.speed,
    );
  };

  const setFlow = (i: number): void => {
    const forward = pressure[from[i]!]! >= pressure[to[i]!]!;
    const a = forward ? from[i]! : to[i]!;
    const b = forward ? to[i]! : from[i]!;
    const p1 = pressure[a]!;
    const t1 = temperature[a]!;
    const p2 = pressure[b]!;
    const opening = openings[i]!;
    let flow = 0;
    if (laws[i] === LAW.gap) flow = gapFlow(gas, opening, sections[i]!, p1, t1, p2);
    else if (laws[i] === OWN) flow = forward ? ownFlow(i) : -ownFlow(i);
    else if (opening === 0) flow = 0;
    else if (laws[i] === LAW.nozzle) flow = nozzleFlow(gas, opening, p1, t1, p2);
    else flow = opening * conductanceFlow(gas, elements[i]!, p1, t1, p2);
    massFlow[i] = forward ? flow : -flow;
    enthalpyFlow[i] = massFlow[i]! * cp * t1;
  };

  return {
    setOpenings(angle, speed) {
      now.angle = angle;
      now.speed = speed;
      const wrapped = wrappedAngle(angle);
      for (let k = 0; k < moving.length; k += 1) {
        const { index, lag, opening } = moving[k]!;
        openings[index] = opening(wrapped - lag, speed);
      }
    },
    setFlows() {
      for (let i = 0; i < laws.length; i += 1) setFlow(i);
    },
    massFlow(i) {
      setFlow(i);
      return massFlow[i]!;
    },
  };
}
