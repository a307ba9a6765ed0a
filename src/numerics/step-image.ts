/** The numbers of one integrator as the kernel wants them, src/kernel/step-header.ts. */
import * as header from '../kernel/step-header.ts';
import { Image } from './image.ts';
import type { OdeProblem, Tolerances } from './integrator.ts';
import { STAGES } from './rosenbrock-coefficients.ts';

export interface StepImage {
  readonly words: Float64Array;
  /** The components that have a column, and those with a tolerance. */
  readonly columns: Int32Array;
  readonly steering: Int32Array;
}

const KINDS = { angle: header.AGAINST_ANGLE, time: header.AGAINST_TIME } as const;

export function stepImage(problem: OdeProblem, { relative, absolute }: Tolerances): StepImage {
  const { dimension, coupled, inKernel, choices } = problem;
  const components = Array.from({ length: dimension }, (_, i) => i);
  const columns = Int32Array.from(coupled ?? components);
  const columnOf = new Int32Array(dimension).fill(-1);
  for (const [column, component] of columns.entries()) columnOf[component] = column;
  const adding = components.filter((i) => columnOf[i]! < 0);
  const steering = Int32Array.from(components.filter((i) => absolute[i]! < Infinity));
  const width = columns.length;
  const image = new Image();
  image.zeros(header.STEP_HEADER_LENGTH);
  image.setCount(header.STEP_DIMENSION, dimension);
  image.setCount(header.WIDTH, width);
  image.setCount(header.KIND, inKernel ? KINDS[inKernel.against] : header.OF_HOST);
  image.setCount(header.STEERING_COUNT, steering.length);
  image.setCount(header.ADDING_COUNT, adding.length);
  image.setCount(header.ADDING_STEERS, steering.some((i) => columnOf[i]! < 0) ? 1 : 0);
  image.setCount(header.COLUMNS, image.counts(columns));
  image.setCount(header.COLUMN_OF, image.counts(columnOf));
  image.setCount(header.ADDING, image.counts(adding));
  image.setCount(header.STEERING, image.counts(steering));
  image.setCount(header.ABSOLUTE, image.numbers(absolute));
  for (const name of [header.START, header.TRIAL, header.END, header.SCRATCH, header.OTHERS, header.DRIFT])
    image.setCount(name, image.zeros(dimension));
  image.setCount(header.SLOPES, image.zeros(STAGES * dimension));
  image.setCount(header.STAGE_VALUES, image.zeros(STAGES * width));
  image.setCount(header.JACOBIAN, image.zeros(dimension * width));
  image.setCount(header.MATRIX, image.zeros(width * width));
  for (const name of [header.PIVOTS, header.PER_ROW, header.PER_DIAGONAL, header.SUMMED])
    image.setCount(name, image.zeros(width));
  for (const name of [header.READ_WEIGHTS, header.READ_SLOPE_WEIGHTS])
    image.setCount(name, image.zeros(STAGES));
  const numbers = image.zeros(header.STEP_NUMBERS_LENGTH);
  image.setCount(header.STEP_NUMBERS, numbers);
  image.setNumber(numbers + header.RELATIVE, relative);
  image.setNumber(numbers + header.DIRECTION, inKernel?.direction ?? 0);
  image.setNumber(numbers + header.CULPRIT, -1);
  image.setNumber(numbers + header.JACOBIAN_COST, inKernel?.jacobianCost ?? 0);
  image.setCount(numbers + header.IS_HOSTED, inKernel && !choices ? 0 : 1);
  return { words: image.words(), columns, steering };
}
