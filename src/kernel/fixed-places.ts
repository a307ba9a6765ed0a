/** Where tables that are the same for every engine stand in the memory; the host writes them once. */
/** Sines and cosines of so many places of a turn. */
export const PLACES_OF_TURN = 512;
export const SINE_TABLE = 1024;
export const COSINE_TABLE = SINE_TABLE + PLACES_OF_TURN;
/** 2^(j/128) in two parts by turns, as src/numerics/elementary/exponential.ts has them. */
export const PLACES_OF_OCTAVE = 128;
export const ROOT_TABLE = COSINE_TABLE + PLACES_OF_TURN;
/** 2ⁿ from −64 to 64. */
export const LEAST_POWER = -64;
export const MOST_POWER = 64;
export const POWER_TABLE = ROOT_TABLE + 2 * PLACES_OF_OCTAVE;
/** x^0.8: of 2ⁿ for those, and nodes, value and slope by turns, of so many cells between 1/2 and 1. */
export const OCTAVE_TABLE = POWER_TABLE + MOST_POWER - LEAST_POWER + 1;
export const CELLS_OF_OCTAVE = 128;
export const OCTAVE_NODES = OCTAVE_TABLE + MOST_POWER - LEAST_POWER + 1;
/** The Rosenbrock method: rows of weights, each as long as there are stages. */
export const STAGES = 6;
export const WEIGHTS = OCTAVE_NODES + 2 * (CELLS_OF_OCTAVE + 1);
export const COUPLING = WEIGHTS + STAGES * STAGES;
export const SOLUTION = COUPLING + STAGES * STAGES;
export const SOLUTION_SLOPE_WEIGHTS = SOLUTION + STAGES;
export const ERROR_SLOPE_WEIGHTS = SOLUTION_SLOPE_WEIGHTS + STAGES;
export const DENSE_SQUARE_WEIGHTS = ERROR_SLOPE_WEIGHTS + STAGES;
export const DENSE_CUBE_WEIGHTS = DENSE_SQUARE_WEIGHTS + STAGES;
export const DENSE_SQUARE_SLOPE_WEIGHTS = DENSE_CUBE_WEIGHTS + STAGES;
export const DENSE_CUBE_SLOPE_WEIGHTS = DENSE_SQUARE_SLOPE_WEIGHTS + STAGES;
export const CLOCK = DENSE_CUBE_SLOPE_WEIGHTS + STAGES;
export const STAGE_PLACES = CLOCK + STAGES;
/**
 * The numbers of a question to the host, and the answer in the first word: handed over as they stand, while numbers that go
 * through the call itself are put on the heap one by one.
 */
export const EXCHANGE = STAGE_PLACES + STAGES;
/** What is laid out anew for each engine begins here. */
export const FIRST_FREE = 4096;
