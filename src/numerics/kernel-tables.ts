/** Fills the tables that are the same for every engine, src/kernel/tables.ts. */
import * as place from '../kernel/fixed-places.ts';
import { rootsOfTwo } from './elementary/exponential.ts';
import { powersOfTwo, ZEROTH } from './elementary/powers-of-two.ts';
import { DENSE_CUBE_WEIGHTS, DENSE_SQUARE_WEIGHTS } from './rosenbrock-coefficients.ts';
import * as rosenbrock from './rosenbrock-tables.ts';
import { cosines, sines } from './sine-cosine.ts';
import { widePowerTable } from './wide-power-table.ts';

const fourFifths = widePowerTable(0.8);

export function writeKernelTables(doubles: Float64Array): void {
  doubles.set(sines, place.SINE_TABLE);
  doubles.set(cosines, place.COSINE_TABLE);
  doubles.set(rootsOfTwo, place.ROOT_TABLE);
  doubles.set(
    powersOfTwo.subarray(ZEROTH + place.LEAST_POWER, ZEROTH + place.MOST_POWER + 1),
    place.POWER_TABLE,
  );
  doubles.set(fourFifths.octaves, place.OCTAVE_TABLE);
  doubles.set(fourFifths.withinOctave.nodes, place.OCTAVE_NODES);
  doubles.set(rosenbrock.WEIGHTS, place.WEIGHTS);
  doubles.set(rosenbrock.COUPLING, place.COUPLING);
  doubles.set(rosenbrock.SOLUTION, place.SOLUTION);
  doubles.set(rosenbrock.SOLUTION_SLOPE_WEIGHTS, place.SOLUTION_SLOPE_WEIGHTS);
  doubles.set(rosenbrock.ERROR_SLOPE_WEIGHTS, place.ERROR_SLOPE_WEIGHTS);
  doubles.set(DENSE_SQUARE_WEIGHTS, place.DENSE_SQUARE_WEIGHTS);
  doubles.set(DENSE_CUBE_WEIGHTS, place.DENSE_CUBE_WEIGHTS);
  doubles.set(rosenbrock.DENSE_SQUARE_SLOPE_WEIGHTS, place.DENSE_SQUARE_SLOPE_WEIGHTS);
  doubles.set(rosenbrock.DENSE_CUBE_SLOPE_WEIGHTS, place.DENSE_CUBE_SLOPE_WEIGHTS);
  doubles.set(rosenbrock.CLOCK, place.CLOCK);
  doubles.set(rosenbrock.PLACES, place.STAGE_PLACES);
}
