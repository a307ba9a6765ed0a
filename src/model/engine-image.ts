/** The numbers of an engine as the kernel wants them, src/kernel/header.ts: once for each engine. */
import { chokedFactor } from '../gas/conductance.ts';
import { gapChokedFactor, gapLoss, laminarFactor } from '../gas/gap.ts';
import type { Gas } from '../gas/gas.ts';
import * as header from '../kernel/header.ts';
import { Image } from '../numerics/image.ts';
import { endVolume, wallArea } from '../parts/cylinder.ts';
import type { AreaLaw, Flow, Opening } from '../parts/passage.ts';
import type { TurnTable } from '../parts/turn-table.ts';
import { ATMOSPHERE, FIRST_VOLUME, SUPPLY, type Engine } from './engine.ts';
import { writeEngineNumbers } from './engine-numbers.ts';
import type { Slots } from './slots.ts';

/** What the kernel has to know of an engine, and the laws it must ask for. */
export interface EngineImage {
  readonly words: Float64Array;
  /** By number in the kernel's list of openings by a law of their own. */
  readonly openings: readonly AreaLaw[];
  /** Where a state, its slopes and their changes may be put for a single look. */
  readonly state: number;
  readonly slopes: number;
  readonly jacobian: number;
  readonly drift: number;
}

const LAW = { nozzle: header.NOZZLE_LAW, gap: header.GAP_LAW, element: header.ELEMENT_LAW } as const;
const GROUP = { nozzle: header.NOZZLES, gap: header.GAPS, element: header.ELEMENTS } as const;

function constants(gas: Gas, flow: Flow): readonly [shape: number, choked: number] {
  switch (flow.law) {
    case 'nozzle':
      return [0, 0];
    case 'gap':
      return [gapLoss(gas, flow.section), gapChokedFactor(gas, flow.section)];
    case 'element':
      return [flow.element.criticalPressureRatio, chokedFactor(gas, flow.element)];
  }
}

/** Where a passage stands among those of its law, and the word for how far it is open; none for one without a law. */
interface GroupSeat {
  readonly law: number;
  readonly place: number;
  readonly opening: number;
}

class EngineImageBuilder {
  private readonly image = new Image();
  private readonly engine: Engine;
  private readonly slots: Slots;

  constructor(engine: Engine, slots: Slots) {
    this.engine = engine;
    this.slots = slots;
    this.image.zeros(header.HEADER_LENGTH);
  }

  build(): EngineImage {
    const { engine, image, slots } = this;
    const { volumes, ends, passages, cylinder } = engine;
    const firstEnd = volumes.length - ends.length;
    const cylinders = cylinder.cylinders;
    image.setCount(header.PLACES, FIRST_VOLUME + volumes.length);
    image.setCount(header.VOLUMES, volumes.length);
    image.setCount(header.PASSAGES, passages.length);
    image.setCount(header.ENDS, ends.length);
    image.setCount(header.CYLINDERS, cylinders);
    image.setCount(header.ENDS_PER_CYLINDER, ends.length / cylinders);
    image.setCount(header.CHEST, engine.chest);
    image.setCount(header.FIRST_END, firstEnd);
    image.setCount(header.DIMENSION, slots.dimension);
    image.setCount(header.TOTALS, 1);
    this.writePlaces();
    this.writeEnds();
    this.writePassages();
    const seats = this.writeGroups();
    const openings = this.writeOpenings(seats);
    this.writeOthers(seats);
    this.writeMeetings();
    this.writeWaste();
    for (const name of [header.COLUMN, header.MOVED, header.MOVED_SLOPES])
      this.set(name, image.zeros(slots.dimension));
    this.set(header.NUMBERS, writeEngineNumbers(engine, image));
    this.set(header.INSTANT, image.zeros(header.INSTANT_LENGTH));
    this.set(header.MEMORY, image.numbers([NaN, NaN, NaN, 0]));
    const state = image.zeros(slots.dimension);
    const slopes = image.zeros(slots.dimension);
    const jacobian = image.zeros(slots.dimension * slots.firstTotal);
    const drift = image.zeros(slots.dimension);
    return { words: image.words(), openings, state, slopes, jacobian, drift };
  }

  private set(name: number, offset: number): void {
    this.image.setCount(name, offset);
  }

  private writePlaces(): void {
    const { engine, image } = this;
    const { volumes, supply, atmosphere, gas } = engine;
    const places = FIRST_VOLUME + volumes.length;
    const pressure = new Float64Array(places);
    const temperature = new Float64Array(places);
    pressure[SUPPLY] = supply.pressure;
    temperature[SUPPLY] = supply.temperature;
    pressure[ATMOSPHERE] = atmosphere.pressure;
    temperature[ATMOSPHERE] = atmosphere.temperature;
    this.set(header.PRESSURE, image.numbers(pressure));
    this.set(header.TEMPERATURE, image.numbers(temperature));
    this.set(header.INVERSE_ROOT, image.numbers(temperature.map((t) => 1 / Math.sqrt(t))));
    this.set(header.LAMINAR, image.numbers(temperature.map((t) => laminarFactor(gas, t))));
    this.set(header.WAYS, image.numbers(new Float64Array(places).fill(1)));
    this.set(header.FIXED_VOLUME, image.numbers(volumes.map(({ fixedVolume }) => fixedVolume ?? 0)));
  }

  private writeEnds(): void {
    const { image } = this;
    const { ends, cylinder } = this.engine;
    const covers = ends.filter(({ side }) => side === 'cover');
    const wall = (end: (typeof ends)[number], volume: number): number => wallArea(end, cylinder.bore, volume);
    this.set(header.OFFSETS, image.numbers(covers.map(({ deadCentre }) => deadCentre)));
    for (const name of [header.LEVERS, header.SINES, header.COSINES, header.REACHES])
      this.set(name, image.zeros(covers.length));
    // One gear drags per cylinder, whatever number of ends it serves: the cover end's.
    this.set(header.STEADY_DRAG, image.numbers(covers.map(({ valveGear }) => valveGear.steadyDrag ?? NaN)));
    this.set(header.DEAD_VOLUME, image.numbers(ends.map((end) => endVolume(end, 0))));
    this.set(
      header.TRAVEL_AREA,
      image.numbers(ends.map(({ side, area }) => (side === 'cover' ? area : -area))),
    );
    this.set(header.COVER_AREA, image.numbers(ends.map((end) => wall(end, 0))));
    this.set(header.BARREL_PER_VOLUME, image.numbers(ends.map((end) => wall(end, 1) - wall(end, 0))));
    for (const name of [header.END_VOLUME, header.VOLUME_RATE, header.WALL_HEAT])
      this.set(name, image.zeros(ends.length));
  }

  private writePassages(): void {
    const { engine, image, slots } = this;
    const { passages } = engine;
    const slotOf = (place: number): number => (place < FIRST_VOLUME ? -1 : slots.mass(place - FIRST_VOLUME));
    const from = passages.map((passage) => passage.from);
    this.set(header.FROM, image.counts(from));
    this.set(header.TO, image.counts(passages.map(({ to }) => to)));
    this.set(header.DONOR, image.counts(from));
    this.set(header.KEPT, image.counts(from));
    this.set(header.SOURCE, image.counts(from.map(slotOf)));
    this.set(header.SINK, image.counts(passages.map(({ to }) => slotOf(to))));
    for (const name of [
      ...[header.MASS_FLOW, header.ENTHALPY_FLOW, header.PER_FROM, header.PER_TO, header.PER_TEMPERATURE],
      ...[header.FLOW_CHANGE, header.ENTHALPY_CHANGE, header.MOVED_FLOW],
    ])
      this.set(name, image.zeros(passages.length));
  }

  /** By passage of the engine. */
  private writeGroups(): readonly (GroupSeat | undefined)[] {
    const { image } = this;
    const { gas, passages } = this.engine;
    const seats: (GroupSeat | undefined)[] = passages.map(() => undefined);
    for (const law of ['nozzle', 'gap', 'element'] as const) {
      const own = [...passages.keys()].filter((i) => passages[i]!.passage.flow?.law === law);
      const flows = own.map((i) => passages[i]!.passage.flow!);
      this.set(GROUP[law], image.counts([own.length]));
      image.counts(own);
      image.counts(own.map((i) => passages[i]!.from));
      image.counts(own.map((i) => passages[i]!.to));
      const openings = image.numbers(flows.map(({ opening }) => (typeof opening === 'number' ? opening : 0)));
      const shapes = image.zeros(2 * own.length);
      for (const [place, flow] of flows.entries()) {
        const [shape, choked] = constants(gas, flow);
        image.setNumber(shapes + place, shape);
        image.setNumber(shapes + own.length + place, choked);
        seats[own[place]!] = { law: LAW[law], place, opening: openings + place };
      }
    }
    return seats;
  }

  private writeOpenings(seats: readonly (GroupSeat | undefined)[]): readonly AreaLaw[] {
    const { image } = this;
    const moving = this.engine.passages.flatMap(({ lag, passage: { flow } }, i) => {
      const seat = seats[i];
      return flow && seat ? [{ lag, law: flow.opening, target: seat.opening }] : [];
    });
    const tabulated = moving.filter(({ law }) => typeof law === 'object');
    this.set(header.TABLES, image.counts([tabulated.length]));
    for (const { lag, law, target } of tabulated) this.writeTable(law as TurnTable, lag, target);
    const byLaw = moving.filter(({ law }) => typeof law === 'function');
    this.set(header.LAWS, image.counts([byLaw.length]));
    for (const { lag, target } of byLaw) {
      image.counts([target]);
      image.numbers([lag]);
    }
    return byLaw.map(({ law }: { law: Opening }) => law as AreaLaw);
  }

  private writeTable({ begins, elsewhere, stretch }: TurnTable, lag: number, target: number): void {
    const { image } = this;
    const { starts, cells, offsets, nodes } = stretch;
    const halves = cells.length;
    image.counts([header.TABLE_STARTS + starts.length + 2 * halves + nodes.length]);
    image.numbers([lag]);
    image.counts([target]);
    image.numbers([begins, elsewhere]);
    image.counts([starts.length - 1]);
    image.numbers(starts);
    image.counts(cells);
    image.counts(offsets);
    image.numbers(nodes);
  }

  /** Passages without a common law, and those that go by the clock. */
  private writeOthers(seats: readonly (GroupSeat | undefined)[]): void {
    const { image } = this;
    const { passages } = this.engine;
    const others = [...passages.keys()].filter((i) => seats[i] === undefined);
    this.set(header.OTHERS, image.counts([others.length]));
    for (const i of others) {
      image.counts([i]);
      image.numbers([passages[i]!.lag]);
    }
    const byTheClock = [...passages.keys()].filter((i) => passages[i]!.passage.byTheClock);
    this.set(header.BY_THE_CLOCK, image.counts([byTheClock.length]));
    for (const i of byTheClock) {
      const seat = seats[i];
      image.counts([i, seat?.law ?? -1, seat?.place ?? others.indexOf(i)]);
    }
  }

  /** Passages at each volume. */
  private writeMeetings(): void {
    const { image } = this;
    const { passages, volumes } = this.engine;
    const meeting = volumes.map((_, volume) =>
      passages.flatMap(({ from, to }, i) =>
        from === volume + FIRST_VOLUME || to === volume + FIRST_VOLUME ? [i] : [],
      ),
    );
    const firstOf = [0];
    for (const own of meeting) firstOf.push(firstOf.at(-1)! + own.length);
    this.set(header.PASSAGES_OF, image.counts(meeting.flat()));
    this.set(header.FIRST_OF, image.counts(firstOf));
  }

  private writeWaste(): void {
    const { image, slots } = this;
    const { ends, passages } = this.engine;
    const leaks = ends.flatMap(({ place, leaksIn }) =>
      leaksIn.map((leak) => ({ leak, way: passages[leak]!.to === place ? 1 : -1 })),
    );
    const firstLeak = [0];
    for (const { leaksIn } of ends) firstLeak.push(firstLeak.at(-1)! + leaksIn.length);
    const wasteSlots = [...new Set(leaks.map(({ leak }) => slots.passageWaste(leak)))];
    this.set(header.ADMISSION, image.counts(ends.map(({ admissionPassage }) => admissionPassage)));
    this.set(header.EXHAUST, image.counts(ends.map(({ exhaustPassage }) => exhaustPassage)));
    this.set(header.FIRST_LEAK, image.counts(firstLeak));
    this.set(header.LEAKS, image.zeros(0));
    for (const { leak, way } of leaks) {
      image.counts([leak]);
      image.numbers([way]);
      image.counts([slots.passageWaste(leak)]);
    }
    this.set(header.WASTE_SLOTS, image.counts([wasteSlots.length, ...wasteSlots]));
  }
}

const images = new WeakMap<Engine, EngineImage>();

/** Built once for each engine, however many systems are made of it. */
export function engineImage(engine: Engine, slots: Slots): EngineImage {
  const known = images.get(engine);
  if (known) return known;
  const image = new EngineImageBuilder(engine, slots).build();
  images.set(engine, image);
  return image;
}
