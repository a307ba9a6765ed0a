/**
 * Settled running as a root: a state at top dead centre that one turn gives back.
 *
 * Gas in chest and cylinder forgets within a few turns, the flywheel remembers for hundreds. So the speed is led: from
 * turn to turn it goes towards where the energy gained per turn would be zero, by the secant through the last two turns,
 * in leaps no longer than the gas can follow. Near the root all unknowns are solved for together by Broyden's method,
 * one turn a step, and ever more closely.
 *
 * The way leads uphill in energy from the start: the root found is the first that the gain of energy meets, as in real
 * running, unless another hides within one leap.
 */
import { broyden } from '../numerics/broyden.ts';
import { FIRST_VOLUME } from '../model/engine.ts';
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import { strokeFraction } from '../parts/crank-train.ts';
import type { TurnFailure } from './one-turn.ts';
import { SLOW } from './speeds.ts';

/** Longest leap, as a change of the logarithm of the speed, and longest step of any unknown near the root. */
const LEAP = 0.8;
const LONGEST_STEP = 0.3;

/** A leap shorter than this comes so near the root that all unknowns are solved for together. */
const NEAR = 0.2;

const MOST_TURNS = 80;

/** A way to run one turn, and how closely turns that it runs are to repeat themselves before a closer way takes over. */
export interface Level {
  /** The state one turn after a state at top dead centre, as far as the physical slots. */
  turn(y: Float64Array): Float64Array | TurnFailure;
  /** Share of the speed, and of any mass or energy of gas. */
  readonly speed: number;
  readonly gas: number;
  /** True when turns that repeat themselves so closely are an answer. */
  readonly enough: boolean;
}

export type RootSearch = { readonly turns: number } & (
  | { readonly kind: 'settled' }
  /** It cannot get round at the speed it had come to. */
  | { readonly kind: 'slow' }
  /** No root found within reach; nothing is said about the engine. */
  | { readonly kind: 'lost' }
  | { readonly kind: 'failed'; readonly failure: TurnFailure }
);

/** The turns of one search, one after the other. */
class Search {
  turns = 0;
  after: Float64Array;
  /** Why the last turn was not finished. */
  failure: TurnFailure | undefined;
  private readonly moment: number;
  readonly y: Float64Array;

  constructor(system: EngineSystem, y: Float64Array) {
    this.moment = system.momentOfInertia(0);
    this.y = y;
    this.after = y;
  }

  /** Runs a turn from `y` into `after`; false when it was not finished. */
  run(level: Level): boolean {
    this.turns += 1;
    const turn = level.turn(this.y);
    this.failure = 'reason' in turn ? turn : undefined;
    if (!('reason' in turn)) this.after = turn;
    return this.failure === undefined;
  }

  /** Kinetic energy that the last turn gained [J]. */
  get gain(): number {
    return 0.5 * this.moment * (this.after[SLOT.speed]! ** 2 - this.y[SLOT.speed]! ** 2);
  }

  end(): RootSearch {
    const { turns, failure } = this;
    if (failure === undefined) return { kind: 'lost', turns };
    return failure.reason === 'slow' ? { kind: 'slow', turns } : { kind: 'failed', failure, turns };
  }
}

/** Leads the speed near to the root: −d gain / d log speed there, or undefined when it got nowhere. */
function lead(search: Search, level: Level): number | undefined {
  const { y } = search;
  let last: { readonly logSpeed: number; readonly gain: number } | undefined;
  let slope = NaN;
  while (search.turns < MOST_TURNS && search.run(level)) {
    const { after, gain } = search;
    const logSpeed = Math.log(y[SLOT.speed]!);
    if (last && Math.abs(logSpeed - last.logSpeed) > 1e-6)
      slope = (last.gain - gain) / (logSpeed - last.logSpeed);
    last = { logSpeed, gain };
    const real = Math.log(after[SLOT.speed]!) - logSpeed;
    const wanted = slope > 0 ? gain / slope : Math.sign(gain) * LEAP;
    const leap = Math.abs(real) > LEAP ? real : Math.max(-LEAP, Math.min(LEAP, wanted));
    if (slope > 0 && Math.abs(leap) < NEAR) return slope;
    for (let i = 0; i < y.length; i += 1) y[i] = after[i]!;
    y[SLOT.speed] = Math.max(2 * SLOW, Math.exp(logSpeed + leap));
  }
  return undefined;
}

/**
 * The gas as unknowns: energy and temperature of every volume. In chest and hose the temperature goes slowly, by the share
 * of their air that a turn replaces; an error that a turn mends by so little is that much larger than it looks.
 */
interface GasUnknowns {
  readonly energySlot: Int32Array;
  /** What a change of temperature per turn is multiplied by to estimate the error. */
  readonly temperatureFactor: Float64Array;
}

function gasUnknowns({ engine, slots }: EngineSystem, y: Float64Array): GasUnknowns {
  const { ends, volumes, gas, chest } = engine;
  const chestDensity =
    y[slots.mass(chest - FIRST_VOLUME)]! / (volumes[chest - FIRST_VOLUME]!.fixedVolume ?? 1);
  // What fills the ends up to their cut-off, at the density of the chest.
  const filled = ends.reduce((sum, { clearanceVolume, sweptVolume, valveGear }) => {
    const share = strokeFraction(engine.crank, valveGear.events.cutOff);
    return sum + clearanceVolume + share * sweptVolume;
  }, 0);
  const replaced = (i: number): number => (filled * chestDensity * gas.heatCapacityRatio) / y[slots.mass(i)]!;
  return {
    energySlot: Int32Array.from(volumes, (_, i) => slots.energy(i)),
    temperatureFactor: Float64Array.from(volumes, ({ fixedVolume }, i) =>
      fixedVolume === undefined ? 1 : 1 / (1 - Math.exp(-replaced(i))),
    ),
  };
}

/** Most turns at one level before the noise of its steps is taken to hide the rest. */
const PATIENCE = 6;

/** Solves for speed and gas together, with the last turn of the search for a beginning. */
function close(search: Search, gas: GasUnknowns, slope: number, levels: readonly Level[]): boolean {
  const { y } = search;
  const { energySlot, temperatureFactor } = gas;
  const size = 1 + 2 * energySlot.length;
  const residual = new Float64Array(size);
  const taken = new Float64Array(size);
  const solver = broyden(size);

  const look = (): void => {
    const { after } = search;
    residual[0] = search.gain / slope;
    for (const [i, slot] of energySlot.entries()) {
      const energy = y[slot]!;
      const temperature = energy / y[slot - 1]!;
      residual[1 + 2 * i] = after[slot]! / energy - 1;
      residual[2 + 2 * i] = (after[slot]! / after[slot - 1]! / temperature - 1) * temperatureFactor[i]!;
    }
  };
  const isWithin = (level: Level): boolean =>
    Math.abs(residual[0]!) < level.speed &&
    residual.every((value, i) => i === 0 || Math.abs(value) < level.gas);
  const step = (): void => {
    const whole = solver.step(residual);
    const longest = whole.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    for (let i = 0; i < size; i += 1) taken[i] = whole[i]! * Math.min(1, LONGEST_STEP / longest);
    y[SLOT.speed]! *= Math.exp(taken[0]!);
    for (const [i, slot] of energySlot.entries()) {
      const grown = 1 + taken[1 + 2 * i]!;
      y[slot]! *= grown;
      y[slot - 1]! *= grown / (1 + taken[2 + 2 * i]!);
    }
  };

  for (const level of levels) {
    const isLast = level === levels.at(-1);
    // A closer level's turn from the same state is a new residual, not the effect of a step.
    if (level !== levels[0] && !search.run(level)) return false;
    look();
    for (let turns = 0; !isWithin(level); turns += 1) {
      if (turns === PATIENCE && isLast) return false;
      if (turns === PATIENCE) break;
      step();
      if (!search.run(level)) return false;
      look();
      solver.learn(taken, residual);
    }
    if (level.enough && isWithin(level)) return true;
  }
  return true;
}

/**
 * Air that was pressed into chest and hose while they filled is warm, and long in being flushed out; what will stand there
 * in settled running comes from the supply and has its temperature, or nearly.
 */
function flush({ engine, slots }: EngineSystem, y: Float64Array): void {
  const { gas, supply, volumes } = engine;
  for (const [i, { fixedVolume }] of volumes.entries())
    if (fixedVolume !== undefined)
      y[slots.mass(i)] = y[slots.energy(i)]! / (gas.heatCapacityAtConstantVolume * supply.temperature);
}

/**
 * Moves `y`, a state at top dead centre, to settled running by turns of ever closer levels. A state that is near already
 * comes with its slope, −d gain / d log speed [J].
 */
export function settleByRoot(
  system: EngineSystem,
  y: Float64Array,
  levels: readonly [Level, ...Level[]],
  slopeNearby?: number,
): RootSearch {
  const search = new Search(system, y);
  let slope = slopeNearby;
  if (slope === undefined) {
    flush(system, y);
    slope = lead(search, levels[0]);
  } else search.run(levels[0]);
  if (search.failure || slope === undefined || !close(search, gasUnknowns(system, y), slope, levels))
    return search.end();
  return { kind: 'settled', turns: search.turns };
}
