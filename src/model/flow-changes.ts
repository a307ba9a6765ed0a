/**
 * How the flows answer to the mass and energy of one volume: the part of the Jacobian that makes the equations stiff.
 *
 *   ∂p/∂m = 0,  ∂p/∂U = (γ−1)/V,  ∂T/∂m = −T/m,  ∂T/∂U = 1/(m cv)
 *   ∂ṁ/∂(m, U) = ∂ṁ/∂p · ∂p/∂(m, U) + ∂ṁ/∂T · ∂T/∂(m, U),    Ḣ = cp T_upstream ṁ
 *
 * The temperature that counts is the upstream one: all flow laws know no other.
 */
import { clear } from './clear.ts';
import { FIRST_VOLUME, type Engine } from './engine.ts';
import type { FlowSlopes } from './flow-slopes.ts';
import type { Flows } from './flows.ts';
import type { Instant } from './instant.ts';
import { SHARE } from './small-share.ts';

/** A class, so that code compiled for one engine serves for the next. */
export class FlowChanges {
  /** Change of each passage's mass flow [kg/s] and enthalpy flow [W] with what was last asked about. */
  readonly massFlow: Float64Array;
  readonly enthalpyFlow: Float64Array;
  private readonly instant: Instant;
  private readonly flows: Flows;
  private readonly cp: number;
  private readonly from: Uint8Array;
  /** Passages at a volume: those of volume v from `firstOf[v]` up to `firstOf[v + 1]`. */
  readonly passagesOf: Uint8Array;
  readonly firstOf: Uint16Array;
  private readonly byTheClock: Uint8Array;
  private readonly slopes: FlowSlopes;
  private readonly moved: Float64Array;
  private readonly ways: Int8Array;

  constructor({ gas, passages, volumes }: Engine, instant: Instant, flows: Flows) {
    const n = passages.length;
    const meeting = volumes.map((_, volume) =>
      passages.flatMap(({ from, to }, i) =>
        from === volume + FIRST_VOLUME || to === volume + FIRST_VOLUME ? [i] : [],
      ),
    );
    this.massFlow = new Float64Array(n);
    this.enthalpyFlow = new Float64Array(n);
    this.instant = instant;
    this.flows = flows;
    this.cp = gas.heatCapacityAtConstantPressure;
    this.from = Uint8Array.from(passages, ({ from }) => from);
    this.passagesOf = Uint8Array.from(meeting.flat());
    this.firstOf = Uint16Array.from([0, ...volumes.map((_, v) => meeting.slice(0, v + 1).flat().length)]);
    this.byTheClock = Uint8Array.from(passages.flatMap(({ passage }, i) => (passage.byTheClock ? [i] : [])));
    this.slopes = {
      perFrom: new Float64Array(n),
      perTo: new Float64Array(n),
      perTemperature: new Float64Array(n),
    };
    this.moved = new Float64Array(n);
    this.ways = new Int8Array(FIRST_VOLUME + volumes.length).fill(1);
  }

  /** Takes the slopes at the instant, at which the flows must stand; needs the slopes of the energies, every other number. */
  begin(energySlopes: Float64Array, first: number): void {
    const { ways } = this;
    for (let place = FIRST_VOLUME, i = first; place < ways.length; place += 1, i += 2)
      ways[place] = energySlopes[i]! >= 0 ? 1 : -1;
    this.flows.writeSlopes(ways, this.slopes);
  }

  /** Writes the changes with an unknown that moves the pressure and the temperature of a volume by so much per unit. */
  write(volume: number, pressureChange: number, temperatureChange: number): void {
    const { passagesOf, firstOf, from, cp, massFlow: flowChange, enthalpyFlow: enthalpyChange } = this;
    const { donor } = this.flows;
    const { temperature, massFlow } = this.instant;
    const { perFrom, perTo, perTemperature } = this.slopes;
    const place = volume + FIRST_VOLUME;
    clear(flowChange);
    clear(enthalpyChange);
    for (let k = firstOf[volume]!; k < firstOf[volume + 1]!; k += 1) {
      const i = passagesOf[k]!;
      const heating = donor[i] === place && massFlow[i] !== 0 ? temperatureChange : 0;
      const byPressure = (place === from[i]! ? perFrom[i]! : perTo[i]!) * pressureChange;
      const change = byPressure + perTemperature[i]! * heating;
      flowChange[i] = change;
      enthalpyChange[i] = cp * (temperature[donor[i]!]! * change + heating * massFlow[i]!);
    }
  }

  /** Writes the changes with the speed [per rad/s]. */
  writeSpeed(angle: number, speed: number): void {
    const { byTheClock, flows, moved, cp, massFlow: flowChange, enthalpyFlow: enthalpyChange } = this;
    const { temperature, massFlow } = this.instant;
    clear(flowChange);
    clear(enthalpyChange);
    if (byTheClock.length === 0) return;
    flows.setOpenings(angle, speed * (1 + SHARE));
    for (const i of byTheClock) {
      flows.writeFlow(i, moved);
      const change = (moved[i]! - massFlow[i]!) / (SHARE * speed);
      flowChange[i] = change;
      enthalpyChange[i] = cp * temperature[flows.donor[i]!]! * change;
    }
    flows.setOpenings(angle, speed);
  }
}
