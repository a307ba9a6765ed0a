/** The integrator that is seated: its counts, and the words at which its arrays begin. */
import * as header from './step-header.ts';
import { intAt, type Index } from './memory.ts';

export let dimension: Index = 0;
export let width: Index = 0;
export let kind: Index = 0;
export let steeringCount: Index = 0;
export let addingCount: Index = 0;
export let addingSteers: Index = 0;
export let columns: Index = 0;
export let columnOf: Index = 0;
export let adding: Index = 0;
export let steering: Index = 0;
export let absolute: Index = 0;
export let start: Index = 0;
export let trial: Index = 0;
export let end: Index = 0;
export let drift: Index = 0;
export let slopes: Index = 0;
export let stages: Index = 0;
export let jacobian: Index = 0;
export let matrix: Index = 0;
export let pivots: Index = 0;
export let perRow: Index = 0;
export let perDiagonal: Index = 0;
export let summed: Index = 0;
export let readWeights: Index = 0;
export let readSlopeWeights: Index = 0;
export let numbers: Index = 0;

/** From now on all is about the integrator whose numbers begin there. */
export function seatStep(base: Index): void {
  dimension = intAt(base, header.STEP_DIMENSION);
  width = intAt(base, header.WIDTH);
  kind = intAt(base, header.KIND);
  steeringCount = intAt(base, header.STEERING_COUNT);
  addingCount = intAt(base, header.ADDING_COUNT);
  addingSteers = intAt(base, header.ADDING_STEERS);
  columns = base + intAt(base, header.COLUMNS);
  columnOf = base + intAt(base, header.COLUMN_OF);
  adding = base + intAt(base, header.ADDING);
  steering = base + intAt(base, header.STEERING);
  absolute = base + intAt(base, header.ABSOLUTE);
  start = base + intAt(base, header.START);
  trial = base + intAt(base, header.TRIAL);
  end = base + intAt(base, header.END);
  drift = base + intAt(base, header.DRIFT);
  slopes = base + intAt(base, header.SLOPES);
  stages = base + intAt(base, header.STAGE_VALUES);
  jacobian = base + intAt(base, header.JACOBIAN);
  matrix = base + intAt(base, header.MATRIX);
  pivots = base + intAt(base, header.PIVOTS);
  perRow = base + intAt(base, header.PER_ROW);
  perDiagonal = base + intAt(base, header.PER_DIAGONAL);
  summed = base + intAt(base, header.SUMMED);
  readWeights = base + intAt(base, header.READ_WEIGHTS);
  readSlopeWeights = base + intAt(base, header.READ_SLOPE_WEIGHTS);
  numbers = base + intAt(base, header.STEP_NUMBERS);
}
