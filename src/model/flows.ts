/**
 * What goes through the passages of an engine: the same as each passage's own `massFlow`, only all at once and quicker.
 *
 * How far a passage is open is asked once per crank angle and speed and then kept for any pressures. Passages go by their
 * law in groups, flow-groups.ts; one that has none of the common laws is asked itself.
 */
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { Flow, Opening } from '../parts/passage.ts';
import { turnTableValue, type TurnTable } from '../parts/turn-table.ts';
import { FIRST_VOLUME, type Engine } from './engine.ts';
import { flowGroup, groupLaws, setPlace, type FlowGroup, type GroupLaw, type Places } from './flow-groups.ts';
import type { Instant } from './instant.ts';

export interface Flows {
  /** How far all passages are open at a crank angle [rad] and a speed ≥ 0 [rad/s]; before any flow is asked for. */
  setOpenings(angle: number, speed: number): void;
  /** Writes mass [kg/s] and enthalpy flows [W] of all passages, at the pressures and temperatures of the instant. */
  setFlows(): void;
  /** Writes the mass flow of a single passage at its place in `out`. */
  writeFlow(index: number, out: Float64Array): void;
}

/** A passage that opens and shuts, by a table or by any law, and where its group keeps how far. */
interface Moving<Law> {
  readonly lag: number;
  readonly law: Law;
  readonly opening: Float64Array;
  readonly k: number;
}

/** Where a passage stands. */
interface Seat {
  readonly law: GroupLaw;
  readonly group: FlowGroup;
  readonly k: number;
}

const LAWS: readonly Flow['law'][] = ['nozzle', 'gap', 'element'];

/** A function of its own, so that the compiler keeps it in one piece. */
function lookUp(tabulated: readonly Moving<TurnTable>[], angle: number): void {
  for (const { lag, law, opening, k } of tabulated) {
    opening[k] = Math.max(0, turnTableValue(law, angle - lag));
  }
}

export function flows(engine: Engine, instant: Instant): Flows {
  const { gas, passages } = engine;
  const { pressure, temperature, massFlow, enthalpyFlow } = instant;
  const cp = gas.heatCapacityAtConstantPressure;
  const from = Uint8Array.from(passages, (passage) => passage.from);
  const to = Uint8Array.from(passages, (passage) => passage.to);
  const groups = LAWS.map((law) => ({ law: groupLaws[law], group: flowGroup(gas, passages, law) }));
  const [nozzles, gaps, elements] = groups.map(({ group }) => group) as [FlowGroup, FlowGroup, FlowGroup];
  const seats = passages.map((_, i): Seat | undefined =>
    groups.map(({ law, group }) => ({ law, group, k: group.passage.indexOf(i) })).find(({ k }) => k >= 0),
  );
  const moving = <Law extends Opening>(is: (opening: Opening) => opening is Law): Moving<Law>[] =>
    passages.flatMap(({ lag, passage: { flow } }, i) =>
      flow && is(flow.opening)
        ? [{ lag, law: flow.opening, opening: seats[i]!.group.opening, k: seats[i]!.k }]
        : [],
    );
  const tabulated = moving((opening) => typeof opening === 'object');
  const byLaw = moving((opening) => typeof opening === 'function');
  const others = Uint8Array.from(seats.flatMap((seat, i) => (seat ? [] : [i])));
  const places: Places = {
    pressure,
    temperature,
    flux: new Float64Array(pressure.length),
    laminar: new Float64Array(pressure.length),
  };
  for (let place = 0; place < FIRST_VOLUME; place += 1) setPlace(gas, places, place);
  const now = { angle: 0, speed: 0 };

  const writeOther = (i: number, out: Float64Array): void => {
    const { lag, passage } = passages[i]!;
    const [a, b] = [from[i]!, to[i]!];
    out[i] = passage.massFlow(
      now.angle - lag,
      pressure[a]!,
      temperature[a]!,
      pressure[b]!,
      temperature[b]!,
      now.speed,
    );
  };

  return {
    setOpenings(angle, speed) {
      now.angle = angle;
      now.speed = speed;
      const wrapped = wrappedAngle(angle);
      lookUp(tabulated, wrapped);
      for (const { lag, law, opening, k } of byLaw) {
        opening[k] = Math.max(0, law(wrapped - lag, speed));
      }
    },
    setFlows() {
      for (let place = FIRST_VOLUME; place < pressure.length; place += 1) setPlace(gas, places, place);
      groupLaws.nozzle(gas, nozzles, places, 0, nozzles.passage.length, massFlow);
      groupLaws.gap(gas, gaps, places, 0, gaps.passage.length, massFlow);
      groupLaws.element(gas, elements, places, 0, elements.passage.length, massFlow);
      for (const i of others) writeOther(i, massFlow);
      for (let i = 0; i < massFlow.length; i += 1) {
        const flow = massFlow[i]!;
        enthalpyFlow[i] = flow * cp * temperature[flow >= 0 ? from[i]! : to[i]!]!;
      }
    },
    writeFlow(i, out) {
      setPlace(gas, places, from[i]!);
      setPlace(gas, places, to[i]!);
      const seat = seats[i];
      if (seat) seat.law(gas, seat.group, places, seat.k, seat.k + 1, out);
      else writeOther(i, out);
    },
  };
}
