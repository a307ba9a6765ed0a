/**
 * How the flows answer to the mass and energy of one volume: the part of the Jacobian that makes the equations stiff.
 *
 *   ∂p/∂m = 0,  ∂p/∂U = (γ−1)/V,  ∂T/∂m = −T/m,  ∂T/∂U = 1/(m cv)
 *   ∂ṁ/∂(m, U) = ∂ṁ/∂p · ∂p/∂(m, U) + ∂ṁ/∂T · ∂T/∂(m, U),    Ḣ = cp T_upstream ṁ
 *
 * The temperature that counts is the upstream one: all flow laws know no other.
 */
import { clear } from './clear.ts';
import * as engine from './engine-seat.ts';
import { SHARE, writeFlowSlopes } from './flow-slopes.ts';
import { FIRST_VOLUME, writeByTheClock } from './flows.ts';
import { HEAT_CAPACITY_AT_CONSTANT_PRESSURE } from './header.ts';
import { at, intAt, put, type Index } from './memory.ts';
import { setOpenings } from './openings.ts';
import { FIRST_MASS } from './state-slots.ts';

/** Takes the slopes at the instant, at which the flows must stand; needs the slopes of the state for its energies. */
export function beginFlowChanges(slopes: Index): void {
  const firstEnergy = FIRST_MASS + 1;
  for (let v = 0; v < engine.volumes; v += 1)
    put(engine.ways, FIRST_VOLUME + v, at(slopes, firstEnergy + 2 * v) >= 0 ? 1 : -1);
  writeFlowSlopes();
}

function clearChanges(): void {
  clear(engine.flowChange, engine.passages);
  clear(engine.enthalpyChange, engine.passages);
}

/** Writes the changes with an unknown that moves the pressure and the temperature of a volume by so much per unit. */
export function writeFlowChanges(volume: Index, pressureChange: number, temperatureChange: number): void {
  const cp = at(engine.numbers, HEAT_CAPACITY_AT_CONSTANT_PRESSURE);
  const place = volume + FIRST_VOLUME;
  clearChanges();
  for (let k = intAt(engine.firstOf, volume); k < intAt(engine.firstOf, volume + 1); k += 1) {
    const i = intAt(engine.passagesOf, k);
    const flow = at(engine.massFlow, i);
    const donor = intAt(engine.donor, i);
    const heating = donor === place && flow !== 0 ? temperatureChange : 0;
    const perPressure = place === intAt(engine.from, i) ? at(engine.perFrom, i) : at(engine.perTo, i);
    const change = perPressure * pressureChange + at(engine.perTemperature, i) * heating;
    put(engine.flowChange, i, change);
    put(engine.enthalpyChange, i, cp * (at(engine.temperature, donor) * change + heating * flow));
  }
}

/** Writes the changes with the speed [per rad/s]. */
export function writeSpeedChanges(angle: number, speed: number): void {
  const cp = at(engine.numbers, HEAT_CAPACITY_AT_CONSTANT_PRESSURE);
  const count = intAt(engine.byTheClock, 0);
  clearChanges();
  if (count === 0) return;
  setOpenings(angle, speed * (1 + SHARE));
  for (let k = 0; k < count; k += 1) {
    const i = writeByTheClock(k, engine.movedFlow);
    const change = (at(engine.movedFlow, i) - at(engine.massFlow, i)) / (SHARE * speed);
    put(engine.flowChange, i, change);
    put(engine.enthalpyChange, i, cp * at(engine.temperature, intAt(engine.donor, i)) * change);
  }
  setOpenings(angle, speed);
}
