/** Random engines that pass every check a scenario has to pass. */
import fc, { type Arbitrary } from 'fast-check';
import { engineComplaints, engineParameters, type EngineSpec } from '../../src/parts/engine-description.ts';
import { arbitraryValues, passing } from './arbitrary-values.ts';

interface Bounds {
  /** Longest engine time of a run [s]; runs cost in proportion. */
  readonly longestTime: number;
  /** How many of a hundred values lie anywhere in their declared range instead of in plausible proportion. */
  readonly strays: number;
}

/** From a fifth of the examples' size to twice. */
const sizes = fc.double({ min: Math.log(0.2), max: Math.log(2), noNaN: true }).map(Math.exp);

export function arbitraryEngine({ longestTime, strays }: Bounds): Arbitrary<EngineSpec> {
  const specs = sizes
    .chain((size) => arbitraryValues(engineParameters, { size, strays }))
    .map((values) => ({ ...(values as unknown as EngineSpec), run: { longest_time: longestTime } }));
  return passing(specs, (spec) => engineComplaints(spec).length === 0, 'the engine');
}
