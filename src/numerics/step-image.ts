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
  const { dimension, coupled, inKernel } = problem;
  const components = Array.from({ length: dimension }, (_, i) => i);
  const columns = Int32Array.from(coupled ?? components);
  const columnOf = new Int32Array(dimension).fill(-1);
  for (const [column, component] of columns.entries()) columnOf[component] = column;
  const adding = components.filter((i) => columnOf[i]! < 0);
  const steering = Int32Array.from(components.filter((i) => absolute[i]! < Infinity));
  const width = columns.length;
  const image = new Image();
  const set = (name: number, offset: number): void => {
    image.setCount(name, offset);
  };
  image.zeros(header.STEP_HEADER_LENGTH);
  set(header.STEP_DIMENSION, dimension);
  set(header.WIDTH, width);
  set(header.KIND, inKernel ? KINDS[inKernel.against] : header.OF_HOST);
  set(header.STEERING_COUNT, steering.length);
  set(header.ADDING_COUNT, adding.length);
  set(header.ADDING_STEERS, steering.some((i) => columnOf[i]! < 0) ? 1 : 0);
  set(header.COLUMNS, image.counts(columns));
  set(header.COLUMN_OF, image.counts(columnOf));
  set(header.ADDING, image.counts(adding));
  set(header.STEERING, image.counts(steering));
  set(header.ABSOLUTE, image.numbers(absolute));
  for (const name of [header.START, header.TRIAL, header.END, header.SCRATCH, header.OTHERS, header.DRIFT])
    set(name, image.zeros(dimension));
  set(header.SLOPES, image.zeros(STAGES * dimension));
  set(header.STAGE_VALUES, image.zeros(STAGES * width));
  set(header.JACOBIAN, image.zeros(dimension * width));
  set(header.MATRIX, image.zeros(width * width));
  for (const name of [header.PIVOTS, header.PER_ROW, header.PER_DIAGONAL, header.SUMMED])
    set(name, image.zeros(width));
  for (const name of [header.READ_WEIGHTS, header.READ_SLOPE_WEIGHTS]) set(name, image.zeros(STAGES));
  const numbers = image.zeros(header.STEP_NUMBERS_LENGTH);
  set(header.STEP_NUMBERS, numbers);
  image.setNumber(numbers + header.RELATIVE, relative);
  image.setNumber(numbers + header.DIRECTION, inKernel?.direction ?? 0);
  image.setNumber(numbers + header.CULPRIT, -1);
  return { words: image.words(), columns, steering };
}
