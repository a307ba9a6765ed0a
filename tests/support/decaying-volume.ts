/** A volume that loses its pressure through a passage into the room, integrated step by step (classical Runge–Kutta). */
import type { Gas } from '../../src/gas/gas.ts';
import type { Passage } from '../../src/parts/passage.ts';

export interface DecayingVolume {
  readonly gas: Gas;
  readonly volume: number;
  readonly from: number;
  readonly against: number;
  readonly temperature: number;
}

/** Pressure [Pa] at the end, and mass lost on the way [kg]. */
export function decayed(passage: Passage, own: DecayingVolume, time: number, steps = 2000) {
  const { gas, volume, against, temperature } = own;
  const flow = (p: number): number => passage.massFlow(0, p, temperature, against, temperature, 0);
  const slope = (p: number): number => (-gas.specificGasConstant * temperature * flow(p)) / volume;
  const dt = time / steps;
  let pressure = own.from;
  let lost = 0;
  for (let i = 0; i < steps; i += 1) {
    const k1 = slope(pressure);
    const k2 = slope(pressure + (dt / 2) * k1);
    const k3 = slope(pressure + (dt / 2) * k2);
    const k4 = slope(pressure + dt * k3);
    const next = pressure + (dt / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    lost += (dt / 6) * (flow(pressure) + 4 * flow(pressure + (dt / 2) * k2) + flow(next));
    pressure = next;
  }
  return { pressure, lost };
}
