/**
 * Random engines that pass every check a scenario has to pass, every kind of valve gear as often as any other.
 *
 * Most random gears cannot be made. So the engine round it is found first and gears are tried on that, or hardly any but
 * those with the fewest sizes would ever come up.
 */
import fc, { type Arbitrary } from 'fast-check';
import type { AnyKind, Chosen } from '../../src/kinds/kind.ts';
import {
  engineComplaints,
  engineParameters,
  partContext,
  type EngineSpec,
} from '../../src/parts/engine-description.ts';
import { cylinderParameters } from '../../src/parts/cylinder.ts';
import type { PartContext } from '../../src/parts/part-context.ts';
import { valveGears } from '../../src/parts/valve-gears/registry.ts';
import type { ValveGear } from '../../src/parts/valve-gears/valve-gear.ts';
import { arbitraryValues, exampleValue, passing, type Manner } from './arbitrary-values.ts';

interface Bounds {
  /** Longest engine time of a run [s]; runs cost in proportion. */
  readonly longestTime: number;
  /** How many of a hundred values lie anywhere in their declared range instead of in plausible proportion. */
  readonly strays: number;
}

type Gear = Chosen<PartContext, ValveGear>;
type GearKind = AnyKind<PartContext, ValveGear>;
type BareEngine = Omit<EngineSpec, 'valve_gear'>;

/** From a fifth of the examples' size to twice. */
const sizes = fc.double({ min: Math.log(0.2), max: Math.log(2), noNaN: true }).map(Math.exp);

/** Up to so many strays in a hundred, most engines are still of a piece. */
const SOME_STRAYS = 5;

/** Gears tried on one engine before another engine is looked for. */
const TRIES = 150;

/** A gear that always fits, but perhaps not on a double-acting cylinder: stands for the one still to be found. */
const placeholder = (servesBothEnds: boolean): Gear => ({
  kind: 'any',
  values: {},
  contextWith: (context) => context,
  complaints: ({ doubleActing }) =>
    doubleActing && !servesBothEnds ? [{ path: [], expected: 'one end', received: 'two' }] : [],
  build: () => {
    throw new Error('a placeholder is never built');
  },
});

/** Whether a kind is refused on a double-acting cylinder whatever its values. */
function servesBothEnds(kind: GearKind, context: PartContext): boolean {
  const [values] = fc.sample(arbitraryValues(kind.parameters, { size: 1, strays: 0 }), {
    numRuns: 1,
    seed: 1,
  });
  const complaints = kind.choose(values!).complaints({ ...context, doubleActing: true });
  return !complaints.some(({ path }) => path.join() === 'kind');
}

const canBe = (engine: BareEngine, valve_gear: Gear): boolean =>
  engineComplaints({ ...engine, valve_gear }).length === 0;

function bareEngine(kind: GearKind, manner: Manner): Arbitrary<BareEngine> {
  const { valve_gear: _gear, ...others } = engineParameters;
  const values = arbitraryValues(others, manner).map((own) => own as unknown as BareEngine);
  const serves = (engine: BareEngine): boolean =>
    servesBothEnds(kind, partContext({ ...engine, valve_gear: placeholder(true) }));
  return passing(
    values,
    (engine) => canBe(engine, placeholder(true)) && canBe(engine, placeholder(serves(engine))),
    'the engine',
  );
}

/** Manners to try a gear in: what is refused as too strange is tried less strange, down to the plausible. */
const eased = ({ size, strays }: Manner): Manner[] =>
  [strays, ...(strays > SOME_STRAYS ? [strays / 4, strays / 16, 0] : [])].map((own) => ({
    size,
    strays: Math.round(own),
  }));

const cylinderBore = exampleValue(cylinderParameters.bore);

function gearFor(engine: BareEngine, kind: GearKind, manner: Manner, seed: number): Gear | undefined {
  // Values far off leave the engine with another size than it was drawn with.
  const size = manner.strays > SOME_STRAYS ? engine.cylinder.bore / cylinderBore : manner.size;
  for (const own of eased({ ...manner, size })) {
    const found = gearInManner(engine, kind, own, seed);
    if (found) return found;
  }
  return undefined;
}

/** The first that can be made of a row of gears; undefined when none can. */
function gearInManner(engine: BareEngine, kind: GearKind, manner: Manner, seed: number): Gear | undefined {
  const gears = arbitraryValues(kind.parameters, manner).map((values) => kind.choose(values));
  for (let tried = 0, batch = 1; tried < TRIES; tried += batch, batch *= 2) {
    const row = fc.sample(gears, { numRuns: batch, seed: seed + tried });
    const found = row.find((gear) => canBe(engine, gear));
    if (found) return found;
  }
  return undefined;
}

export function arbitraryEngine({ longestTime, strays }: Bounds): Arbitrary<EngineSpec> {
  return fc
    .tuple(fc.constantFrom(...valveGears.kinds), sizes, fc.nat())
    .chain(([kind, size, seed]) =>
      bareEngine(kind, { size, strays }).map((engine) => {
        const valve_gear = gearFor(engine, kind, { size, strays }, seed);
        return valve_gear && { ...engine, valve_gear, run: { longest_time: longestTime } };
      }),
    )
    .filter((engine) => engine !== undefined);
}
