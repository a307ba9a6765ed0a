/**
 * The kernel says the same to the last bit as WebAssembly and as the plain TypeScript it is written in: of every engine that
 * is shipped and of random ones, in states near to running and far from it, by all that it can be asked.
 */
import { describe, expect, it } from 'vitest';
import { DIMENSION, TOTALS } from '../../src/kernel/header.ts';
import {
  CALM_ABOVE,
  CALM_COMPONENT,
  OTHERS,
  PROPOSED,
  SCRATCH,
  SLOPES,
  START,
  STEP_NUMBERS,
  TRIES_LEFT,
} from '../../src/kernel/step-header.ts';
import { BEHIND, TANGENT_NUMBERS } from '../../src/kernel/tangent-header.ts';
import { engineImage, type EngineImage } from '../../src/model/engine-image.ts';
import { LawsOfEngine } from '../../src/model/engine-laws.ts';
import { buildEngine } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import { engineSystem, type Direction, type EngineSystem } from '../../src/model/system.ts';
import type { OdeProblem, Tolerances } from '../../src/numerics/integrator.ts';
import { stepImage } from '../../src/numerics/step-image.ts';
import { TangentFlow } from '../../src/numerics/tangent-flow.ts';
import type { EngineSpec } from '../../src/parts/engine-description.ts';
import { AngleProblem, TimeProblem } from '../../src/run/stepper-problems.ts';
import { tolerances, turningTolerances } from '../../src/run/stepper-tolerances.ts';
import { holdEnergy } from '../../src/run/turning-view.ts';
import { anyEngine } from '../support/any-engine.ts';
import { difference, noLaw, seatedInBoth, type Images, type Seated } from '../support/both-kernels.ts';
import { noise } from '../support/noise.ts';
import { shipped, shippedNames } from '../support/shipped.ts';

/** TICKOVER_CASES asks for more. */
const RANDOM_ENGINES = Number(process.env['TICKOVER_CASES'] ?? 20);
const STATES = 5;

/** Asks both the same: what they answer, and every number they then hold, has to be the same. */
class Comparison {
  private readonly images: Partial<Images>;
  private readonly both: readonly [Seated, Seated];

  constructor(images: Partial<Images>) {
    this.images = images;
    this.both = seatedInBoth(images);
  }

  ask(what: string, question: (seated: Seated) => unknown): void {
    const { both, images } = this;
    // Flags are numbers to WebAssembly.
    const [plain, compiled] = both.map((seated) => [question(seated)].flat().map(Number));
    expect({ what, said: plain }).toEqual({ what, said: compiled });
    for (const part of ['engine', 'step', 'tangent'] as const) {
      const found = difference(both, part, images[part]?.length ?? 0);
      expect({ what, part, found }).toEqual({ what, part, found: undefined });
    }
  }
}

/** The state in which an engine is looked at, by both kinds of slopes. */
interface Look {
  readonly angle: number;
  readonly inTime: Float64Array;
  readonly inAngle: Float64Array;
}

/** The first as it stands in room air, where all pressures are the same. */
function looks(system: EngineSystem, seed: number): Look[] {
  const { uniform } = noise(seed);
  return Array.from({ length: STATES }, (_, n) => {
    const angle = n === 3 ? 1e4 * uniform() : 14 * uniform() - 7;
    const inTime = initialState(system, angle, n === 1 ? 0 : 0.5 * 400 ** uniform());
    for (let slot = system.slots.mass(0); n > 0 && slot < system.slots.firstTotal; slot += 1)
      inTime[slot]! *= 0.5 * 16 ** uniform();
    const inAngle = inTime.slice();
    holdEnergy(system, inAngle);
    return { angle, inTime, inAngle };
  });
}

function compareSlopes(comparison: Comparison, image: EngineImage, { angle, inTime, inAngle }: Look): void {
  const placed = ({ doubles, engine }: Seated, y: Float64Array) => {
    doubles.set(y, engine + image.state);
    return [
      engine + image.state,
      engine + image.slopes,
      engine + image.jacobian,
      engine + image.drift,
    ] as const;
  };
  comparison.ask('setPosition', ({ functions }) => functions.setPosition(angle));
  for (const direction of [1, -1, 0]) {
    comparison.ask(`timeSlopes ${direction}`, (seated) => {
      const [state, slopes] = placed(seated, inTime);
      return seated.functions.timeSlopes(direction, state, slopes);
    });
    comparison.ask(`timeJacobian ${direction}`, (seated) => {
      const [state, slopes, jacobian] = placed(seated, inTime);
      return seated.functions.timeJacobian(direction, state, slopes, jacobian);
    });
  }
  comparison.ask('keepDonors', ({ functions }) => functions.keepDonors());
  comparison.ask('lookAtRest', (seated) => seated.functions.lookAtRest(placed(seated, inTime)[0]));
  comparison.ask('angleSlopes', (seated) => {
    const [state, slopes] = placed(seated, inAngle);
    return seated.functions.angleSlopes(angle, state, slopes);
  });
  comparison.ask('angleJacobian', (seated) => {
    const [state, slopes, jacobian, drift] = placed(seated, inAngle);
    seated.functions.angleJacobian(angle, state, slopes, jacobian);
    return seated.functions.angleDrift(angle, state, slopes, drift);
  });
  for (const ahead of [0, 0.3, 1, 3])
    comparison.ask(`areStale ${ahead}`, (seated) =>
      seated.functions.areStale(angle + ahead, placed(seated, inAngle)[0]),
    );
  comparison.ask('areDonorsStale', ({ functions }) => functions.areDonorsStale());
  comparison.ask('releaseDonors', ({ functions }) => functions.releaseDonors());
  comparison.ask('look', (seated) => seated.functions.look(placed(seated, inTime)[0]));
  comparison.ask('restoreDonors', ({ functions }) => functions.restoreDonors());
  comparison.ask('look with donors', (seated) => seated.functions.look(placed(seated, inTime)[0]));
  comparison.ask('releaseDonors again', ({ functions }) => functions.releaseDonors());
}

/** Shares of a step at which components are asked about, and two in a row at the same. */
const PLACES = [0.25, 0.25, 0.8, 1];

function compareSteps(
  comparison: Comparison,
  dimension: number,
  x: number,
  y: Float64Array,
  lengths: readonly number[],
): void {
  const word = ({ integers, step }: Seated, name: number): number => step + integers[2 * (step + name)]!;
  comparison.ask('lookAhead', (seated) => {
    seated.doubles.set(y, word(seated, START));
    return seated.functions.lookAhead(x);
  });
  for (const length of lengths) {
    comparison.ask(`attempt ${length}`, ({ functions }) => functions.attempt(length));
    for (const share of PLACES)
      comparison.ask(`components at ${share}`, ({ functions }) =>
        Array.from({ length: dimension }, (_, i) => functions.component(i, share)),
      );
    comparison.ask(`writeEnd ${length}`, ({ functions }) => functions.writeEnd());
    comparison.ask(`shareOfTolerance`, ({ functions }) => functions.shareOfTolerance(SLOT.speed, length));
  }
  comparison.ask('evaluate', (seated) => {
    seated.doubles.set(y, word(seated, SCRATCH));
    return seated.functions.evaluate(x, word(seated, SCRATCH), word(seated, OTHERS));
  });
  comparison.ask('fillMatrix', ({ functions }) => functions.fillMatrix(1e-3 * lengths[0]!));
  comparison.ask('factorise', ({ functions }) => functions.factorise());
  comparison.ask('solve', (seated) => seated.functions.solve(word(seated, SLOPES)));
}

/** A whole journey, with its tangent; every step that turns slower than most is shown, and the fifth of those stops it. */
function compareJourney(
  images: Partial<Images>,
  { dimension, coupledInAngle }: EngineSystem,
  { angle, inAngle }: Look,
): void {
  const number = ({ doubles, integers, step }: Seated, name: number, value: number): void => {
    doubles[step + integers[2 * (step + STEP_NUMBERS)]! + name] = value;
  };
  let shown = 0;
  const comparison = new Comparison({
    ...images,
    tangent: new TangentFlow(dimension, coupledInAngle.length).seat.image,
    host: () => ({ show: () => (shown += 1) % 5 === 0 }),
  });
  comparison.ask('travel', (seated) => {
    const { doubles, integers, step, tangent, functions } = seated;
    shown = 0;
    doubles.set(inAngle, step + integers[2 * (step + START)]!);
    doubles[tangent + integers[2 * (tangent + TANGENT_NUMBERS)]! + BEHIND] = NaN;
    number(seated, TRIES_LEFT, 40);
    number(seated, PROPOSED, NaN);
    number(seated, CALM_ABOVE, 0.9 * inAngle[SLOT.speed]!);
    integers[2 * (step + integers[2 * (step + STEP_NUMBERS)]! + CALM_COMPONENT)] = SLOT.speed;
    return [functions.travel(angle, angle + 2), shown];
  });
}

/** The numbers of an engine whose state ends before the totals, as src/model/system.ts has them. */
function withoutTotals(words: Float64Array, dimension: number): Float64Array {
  const copy = words.slice();
  const integers = new Int32Array(copy.buffer);
  integers[2 * TOTALS] = 0;
  integers[2 * DIMENSION] = dimension;
  return copy;
}

function compare(spec: EngineSpec, totals: boolean, seed: number): void {
  const engine = buildEngine(spec);
  const system = engineSystem(engine, { totals });
  const { dimension, slots } = system;
  const image = engineImage(engine, slots);
  const laws = new LawsOfEngine(engine, image.openings);
  const words = totals ? image.words : withoutTotals(image.words, dimension);
  const comparison = (problem?: OdeProblem, own?: Tolerances): Comparison =>
    new Comparison({ engine: words, laws, ...(problem && own && { step: stepImage(problem, own).words }) });
  const states = looks(system, seed);
  const slopes = comparison();
  for (const look of states) compareSlopes(slopes, image, look);
  for (const { angle, inAngle } of states) {
    const steps = comparison(new AngleProblem(system, false), turningTolerances(system, 1e-4));
    compareSteps(steps, dimension, angle, inAngle, [1e-4, 0.02, 0.3]);
  }
  const step = stepImage(new AngleProblem(system, false), turningTolerances(system, 1e-4)).words;
  for (const look of states) compareJourney({ engine: words, laws, step }, system, look);
  for (const [n, { inTime }] of states.entries()) {
    const direction = (n % 3) - 1;
    const steps = comparison(
      new TimeProblem(system, direction as Direction, false),
      tolerances(system, 1e-4),
    );
    compareSteps(steps, dimension, 0.3, inTime, [1e-6, 1e-4, 1e-3]);
  }
}

describe('the kernel, plain and compiled, says the same', () => {
  it.each(shippedNames)('of %s', (name) => {
    compare(shipped(name), true, 1);
  });

  it('of random engines', () => {
    for (let number = 1; number <= RANDOM_ENGINES; number += 1)
      compare(anyEngine(number), number % 3 > 0, number);
  });

  it('of a problem that is no engine', () => {
    // The third only adds up, and slopes go with x.
    const dimension = 3;
    const derivative = (x: number, y: Float64Array, slopes: Float64Array): void => {
      slopes.set([y[1]!, -100 * y[0]! - 3 * y[1]! + x, y[0]! * y[1]!]);
    };
    const problem: OdeProblem = { dimension, coupled: [0, 1], derivative };
    const { words } = stepImage(problem, { relative: 1e-4, absolute: Float64Array.of(1, 1e-3, 1e-3) });
    const comparison = new Comparison({
      step: words,
      host: (doubles) => ({
        slopes: (x, state, slopes) => {
          derivative(
            x,
            doubles.subarray(state, state + dimension),
            doubles.subarray(slopes, slopes + dimension),
          );
        },
      }),
    });
    compareSteps(comparison, dimension, 0.5, Float64Array.of(1, -2, 3), [1e-3, 0.1, 2]);
  });

  it.each([0, 1])('of a problem without a finite slope of component %d', (faulty) => {
    const { words } = stepImage(
      { dimension: 2, derivative: noLaw },
      { relative: 1e-4, absolute: Float64Array.of(1, 1) },
    );
    const comparison = new Comparison({
      step: words,
      host: (doubles) => ({
        slopes: (_x, _state, slopes) => {
          doubles.fill(1, slopes, slopes + 2);
          doubles[slopes + faulty] = Infinity;
        },
      }),
    });
    comparison.ask('lookAhead', ({ functions }) => functions.lookAhead(0));
    comparison.ask('attempt', ({ functions }) => functions.attempt(0.1));
  });
});
