/**
 * What goes through the passages of an engine: the same as each passage's own `massFlow`, only all at once and quicker.
 *
 * How far a passage is open is asked once per crank angle and speed and then kept for any pressures. Passages go by their
 * law in groups, flow-groups.ts; one that has none of the common laws is asked itself.
 */
import type { Gas } from '../gas/gas.ts';
import { wrappedAngle } from '../parts/crank-positions.ts';
import type { AreaLaw, Opening } from '../parts/passage.ts';
import { turnTableValue, type TurnTable } from '../parts/turn-table.ts';
import { FIRST_VOLUME, type Engine, type EnginePassage } from './engine.ts';
import { flowGroup, groupLaws, setPlace, type FlowGroup, type GroupLaw, type Places } from './flow-groups.ts';
import { writeElementSlopes, writeGapSlopes, writeNozzleSlopes, type FlowSlopes } from './flow-slopes.ts';
import type { Instant } from './instant.ts';
import { SHARE } from './small-share.ts';

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

/** A function of its own, so that the compiler keeps it in one piece. */
function lookUp(tabulated: readonly Moving<TurnTable>[], angle: number): void {
  for (const { lag, law, opening, k } of tabulated) {
    opening[k] = Math.max(0, turnTableValue(law, angle - lag));
  }
}

/** The passages of an engine; a class, so that code compiled for one engine serves for the next. */
export class Flows {
  private readonly gas: Gas;
  private readonly passages: readonly EnginePassage[];
  private readonly places: Places;
  private readonly massFlow: Float64Array;
  private readonly enthalpyFlow: Float64Array;
  private readonly from: Uint8Array;
  private readonly to: Uint8Array;
  /** By passage, the place whose temperature its air has. */
  readonly donor: Uint8Array;
  private readonly kept: Uint8Array;
  private areKept = false;
  private readonly nozzles: FlowGroup;
  private readonly gaps: FlowGroup;
  private readonly elements: FlowGroup;
  private readonly seats: readonly (Seat | undefined)[];
  private readonly tabulated: readonly Moving<TurnTable>[];
  private readonly byLaw: readonly Moving<AreaLaw>[];
  private readonly others: Uint8Array;
  private readonly moved: Float64Array;
  private angle = NaN;
  private speed = NaN;

  constructor({ gas, passages }: Engine, instant: Instant) {
    const { pressure, temperature, massFlow, enthalpyFlow } = instant;
    this.gas = gas;
    this.passages = passages;
    this.massFlow = massFlow;
    this.enthalpyFlow = enthalpyFlow;
    this.moved = new Float64Array(passages.length);
    this.from = Uint8Array.from(passages, (passage) => passage.from);
    this.to = Uint8Array.from(passages, (passage) => passage.to);
    this.donor = this.from.slice();
    this.kept = this.from.slice();
    this.nozzles = flowGroup(gas, passages, 'nozzle', this.donor);
    this.gaps = flowGroup(gas, passages, 'gap', this.donor);
    this.elements = flowGroup(gas, passages, 'element', this.donor);
    this.seats = passages.map((_, i) => this.seatOf(i));
    this.others = Uint8Array.from(this.seats.flatMap((seat, i) => (seat ? [] : [i])));
    this.tabulated = this.moving((opening) => typeof opening === 'object');
    this.byLaw = this.moving((opening) => typeof opening === 'function');
    const [inverseRoot, laminar] = [new Float64Array(pressure.length), new Float64Array(pressure.length)];
    this.places = { pressure, temperature, inverseRoot, laminar };
    for (let place = 0; place < FIRST_VOLUME; place += 1) setPlace(gas, this.places, place);
  }

  private seatOf(passage: number): Seat | undefined {
    const seats: readonly Seat[] = [
      { law: groupLaws.nozzle, group: this.nozzles, k: this.nozzles.passage.indexOf(passage) },
      { law: groupLaws.gap, group: this.gaps, k: this.gaps.passage.indexOf(passage) },
      { law: groupLaws.element, group: this.elements, k: this.elements.passage.indexOf(passage) },
    ];
    return seats.find(({ k }) => k >= 0);
  }

  private moving<Law extends Opening>(is: (opening: Opening) => opening is Law): Moving<Law>[] {
    return this.passages.flatMap(({ lag, passage: { flow } }, i) => {
      const seat = this.seats[i];
      return flow && seat && is(flow.opening)
        ? [{ lag, law: flow.opening, opening: seat.group.opening, k: seat.k }]
        : [];
    });
  }

  /** How far all passages are open at a crank angle [rad] and a speed ≥ 0 [rad/s]; before any flow is asked for. */
  setOpenings(angle: number, speed: number): void {
    const { byLaw } = this;
    // Many states are looked at at one angle: stages of a step, and the step behind it.
    const isElsewhere = angle !== this.angle;
    this.angle = angle;
    this.speed = speed;
    if (!isElsewhere && byLaw.length === 0) return;
    const wrapped = wrappedAngle(angle);
    if (isElsewhere) lookUp(this.tabulated, wrapped);
    for (const { lag, law, opening, k } of byLaw) {
      opening[k] = Math.max(0, law(wrapped - lag, speed));
    }
  }

  /** Writes mass [kg/s] and enthalpy flows [W] of all passages, at the pressures and temperatures of the instant. */
  setFlows(): void {
    const { gas, places, massFlow, enthalpyFlow, donor, nozzles, gaps, elements, others } = this;
    const { temperature } = places;
    const cp = gas.heatCapacityAtConstantPressure;
    for (let place = FIRST_VOLUME; place < temperature.length; place += 1) setPlace(gas, places, place);
    if (this.areKept) donor.set(this.kept);
    else this.chooseDonors();
    groupLaws.nozzle(gas, nozzles, places, 0, nozzles.passage.length, massFlow);
    groupLaws.gap(gas, gaps, places, 0, gaps.passage.length, massFlow);
    groupLaws.element(gas, elements, places, 0, elements.passage.length, massFlow);
    for (const i of others) this.writeOther(i, massFlow);
    for (let i = 0; i < massFlow.length; i += 1)
      enthalpyFlow[i] = massFlow[i]! * cp * temperature[donor[i]!]!;
  }

  /** Air comes from where the pressure is higher. */
  private donorOf(i: number): number {
    const { from, to } = this;
    const { pressure } = this.places;
    return pressure[from[i]!]! >= pressure[to[i]!]! ? from[i]! : to[i]!;
  }

  private chooseDonors(): void {
    const { donor } = this;
    for (let i = 0; i < donor.length; i += 1) donor[i] = this.donorOf(i);
  }

  /** From now on the donors are those of the last flows, whatever the pressures; until they are released. */
  keepDonors(): void {
    this.kept.set(this.donor);
    this.areKept = true;
  }

  releaseDonors(): void {
    this.areKept = false;
  }

  /** Back to the donors that were kept before they were released. */
  restoreDonors(): void {
    this.areKept = true;
  }

  /** Whether by the pressures of the instant any air comes from elsewhere than was kept. */
  get areDonorsStale(): boolean {
    const { kept } = this;
    for (let i = 0; i < kept.length; i += 1) if (kept[i] !== this.donorOf(i)) return true;
    return false;
  }

  /** Writes the mass flow of a single passage at its place in `out`. */
  writeFlow(i: number, out: Float64Array): void {
    const { gas, places } = this;
    setPlace(gas, places, this.from[i]!);
    setPlace(gas, places, this.to[i]!);
    const seat = this.seats[i];
    if (seat) seat.law(gas, seat.group, places, seat.k, seat.k + 1, out);
    else this.writeOther(i, out);
  }

  /**
   * Writes how all flows answer, at the pressures and temperatures of the instant, at which they must stand. `ways` says
   * for each place whether its energy is rising, +1, or falling, −1: a valve may be about to open, or just shut.
   */
  writeSlopes(ways: Int8Array, slopes: FlowSlopes): void {
    const { gas, places, massFlow, nozzles, gaps, elements, others } = this;
    writeNozzleSlopes(gas, nozzles, places, massFlow, slopes);
    writeGapSlopes(gas, gaps, places, massFlow, slopes);
    writeElementSlopes(gas, elements, places, massFlow, slopes);
    for (const i of others) {
      const { pressure, temperature } = places;
      const [a, b] = [this.from[i]!, this.to[i]!];
      slopes.perFrom[i] = this.differenceOf(i, pressure, a, ways[a]!);
      slopes.perTo[i] = this.differenceOf(i, pressure, b, ways[b]!);
      slopes.perTemperature[i] = this.differenceOf(i, temperature, this.donor[i]!, 1);
    }
  }

  /** Of a passage that has none of the common laws, with the pressure or temperature of a place. */
  private differenceOf(i: number, quantity: Float64Array, place: number, way: number): number {
    const { moved, massFlow } = this;
    const here = quantity[place]!;
    quantity[place] = here * (1 + way * SHARE);
    const made = quantity[place] - here;
    this.writeOther(i, moved);
    quantity[place] = here;
    return (moved[i]! - massFlow[i]!) / made;
  }

  private writeOther(i: number, out: Float64Array): void {
    const { pressure, temperature } = this.places;
    const { lag, passage } = this.passages[i]!;
    const [a, b] = [this.from[i]!, this.to[i]!];
    // No law knows of any temperature but that of the donor.
    const t = temperature[this.donor[i]!]!;
    out[i] = passage.massFlow(this.angle - lag, pressure[a]!, t, pressure[b]!, t, this.speed);
  }
}
