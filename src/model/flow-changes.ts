/**
 * How the flows answer to the mass and energy of one volume: the part of the Jacobian that makes the equations stiff.
 *
 *   ∂p/∂m = 0,  ∂p/∂U = (γ−1)/V,  ∂T/∂m = −T/m,  ∂T/∂U = 1/(m cv)
 *   ∂ṁ/∂(m, U) = ∂ṁ/∂p · ∂p/∂(m, U) + ∂ṁ/∂T · ∂T/∂(m, U),    Ḣ = cp T_upstream ṁ
 *
 * ∂ṁ/∂p and ∂ṁ/∂T by a difference per passage and volume at its ends; a whole difference quotient would ask every passage
 * about every volume. The temperature that counts is the upstream one: all flow laws know no other.
 */
import { FIRST_VOLUME, type Engine } from './engine.ts';
import type { Flows } from './flows.ts';
import type { Instant } from './instant.ts';
import { SHARE } from './small-share.ts';

export interface FlowChanges {
  /** Change of each passage's mass flow [kg/s] and enthalpy flow [W] with what was last asked about. */
  readonly massFlow: Float64Array;
  readonly enthalpyFlow: Float64Array;
  /** Takes the differences at the instant; needs the way each volume's energy goes, for kinks right ahead. */
  begin(rising: (volume: number) => boolean): void;
  /** Writes the changes with an unknown that moves the pressure and the temperature of a volume by so much per unit. */
  write(volume: number, pressureChange: number, temperatureChange: number): void;
  /** Writes the changes with the speed [per rad/s]. */
  writeSpeed(angle: number, speed: number): void;
}

/** `flows` must stand at the instant. */
export function flowChanges(engine: Engine, instant: Instant, flows: Flows): FlowChanges {
  const { gas, passages, volumes } = engine;
  const { pressure, temperature, massFlow } = instant;
  const cp = gas.heatCapacityAtConstantPressure;
  const n = passages.length;
  /** ∂ṁ/∂p at either end, ∂ṁ/∂T upstream. */
  const perFrom = new Float64Array(n);
  const perTo = new Float64Array(n);
  const perTemperature = new Float64Array(n);
  const flowChange = new Float64Array(n);
  const enthalpyChange = new Float64Array(n);
  const byTheClock = passages.flatMap(({ passage }, i) => (passage.byTheClock ? [i] : []));
  const moved = new Float64Array(n);
  const ways = new Float64Array(volumes.length);
  const passagesOf = volumes.map((_, volume) => {
    const place = volume + FIRST_VOLUME;
    return Int32Array.from(
      passages.flatMap(({ from, to }, i) => (from === place || to === place ? [i] : [])),
    );
  });

  const upstreamOf = (i: number): number => (massFlow[i]! >= 0 ? passages[i]!.from : passages[i]!.to);

  /** ∂ṁ/∂(pressure or temperature of a place). */
  const slope = (i: number, quantity: Float64Array, place: number, way: number): number => {
    const here = quantity[place]!;
    quantity[place] = here + way * SHARE * here;
    const made = quantity[place] - here;
    flows.writeFlow(i, moved);
    quantity[place] = here;
    return (moved[i]! - massFlow[i]!) / made;
  };

  return {
    massFlow: flowChange,
    enthalpyFlow: enthalpyChange,
    begin(rising) {
      for (let v = 0; v < ways.length; v += 1) ways[v] = rising(v) ? 1 : -1;
      for (let i = 0; i < n; i += 1) {
        const { from, to } = passages[i]!;
        if (from >= FIRST_VOLUME) perFrom[i] = slope(i, pressure, from, ways[from - FIRST_VOLUME]!);
        if (to >= FIRST_VOLUME) perTo[i] = slope(i, pressure, to, ways[to - FIRST_VOLUME]!);
        const upstream = upstreamOf(i);
        if (upstream >= FIRST_VOLUME && massFlow[i] !== 0)
          perTemperature[i] = slope(i, temperature, upstream, 1);
      }
    },
    write(volume, pressureChange, temperatureChange) {
      const place = volume + FIRST_VOLUME;
      const own = passagesOf[volume]!;
      flowChange.fill(0);
      enthalpyChange.fill(0);
      for (const i of own) {
        const upstream = upstreamOf(i);
        const heating = upstream === place && massFlow[i] !== 0 ? temperatureChange : 0;
        const byPressure = (place === passages[i]!.from ? perFrom[i]! : perTo[i]!) * pressureChange;
        const change = byPressure + perTemperature[i]! * heating;
        flowChange[i] = change;
        enthalpyChange[i] = cp * (temperature[upstream]! * change + heating * massFlow[i]!);
      }
    },
    writeSpeed(angle, speed) {
      flowChange.fill(0);
      enthalpyChange.fill(0);
      if (byTheClock.length === 0) return;
      flows.setOpenings(angle, speed * (1 + SHARE));
      for (const i of byTheClock) {
        flows.writeFlow(i, moved);
        const change = (moved[i]! - massFlow[i]!) / (SHARE * speed);
        flowChange[i] = change;
        enthalpyChange[i] = cp * temperature[upstreamOf(i)]! * change;
      }
      flows.setOpenings(angle, speed);
    },
  };
}
