/**
 * Engines and integrators take turns in the one memory of the kernel: more of them than there is room for answer as each
 * would alone, and what cannot be answered any more is an error.
 *
 * Fills that memory, and so runs with modules of its own.
 */
import { describe, expect, it } from 'vitest';
import { FIRST_FREE } from '../../src/kernel/fixed-places.ts';
import { engineImage } from '../../src/model/engine-image.ts';
import { buildEngine } from '../../src/model/engine.ts';
import { initialState } from '../../src/model/initial-state.ts';
import { SLOT } from '../../src/model/slots.ts';
import { engineSystem, type EngineSystem } from '../../src/model/system.ts';
import { doubles, Seat, takeEngineSeat, takeStepSeat } from '../../src/numerics/kernel.ts';
import { RosenbrockIntegrator } from '../../src/numerics/rosenbrock-integrator.ts';
import { RosenbrockStep } from '../../src/numerics/rosenbrock-step.ts';
import { TangentFlow } from '../../src/numerics/tangent-flow.ts';
import { AngleProblem } from '../../src/run/stepper-problems.ts';
import { turningTolerances } from '../../src/run/stepper-tolerances.ts';
import { holdEnergy } from '../../src/run/turning-view.ts';
import { anyEngine } from '../support/any-engine.ts';
import { noHost, noLaws } from '../support/both-kernels.ts';
import { shipped, shippedNames } from '../support/shipped.ts';

const specs = [...shippedNames.map(shipped), ...Array.from({ length: 40 }, (_, i) => anyEngine(i + 1))];
const engines = [1, 2, 3].flatMap(() => specs.map(buildEngine));

/** [rad] */
const STRETCH = 0.4;
const ROUNDS = 4;

/** One engine on its way, piece by piece. */
class Traveller {
  readonly y: Float64Array;
  readonly tangent: TangentFlow;
  private readonly integrator: RosenbrockIntegrator;
  private angle = 0.2;

  constructor(system: EngineSystem, keepsDonors: boolean) {
    this.y = initialState(system, this.angle, 20);
    holdEnergy(system, this.y);
    const problem = new AngleProblem(system, keepsDonors);
    this.integrator = new RosenbrockIntegrator(problem, turningTolerances(system, 1e-3));
    this.tangent = new TangentFlow(system.dimension, system.coupledInAngle.length);
  }

  follow(): void {
    this.tangent.begin();
  }

  goOn(): void {
    this.integrator.advance(this.angle, this.y, this.angle + STRETCH, {
      stepLimit: 30,
      tangent: this.tangent,
    });
    this.angle += STRETCH;
  }
}

const travellers = (keepsDonors: boolean): Traveller[] =>
  engines.map((engine, i) => new Traveller(engineSystem(engine, { totals: i % 3 > 0 }), keepsDonors));

describe('more engines than there is room for', () => {
  it('are many more numbers than the memory that is used in turn', () => {
    const words = engines.map((engine) => engineImage(engine, engineSystem(engine).slots).words.length);
    expect(words.reduce((sum, length) => sum + length)).toBeGreaterThan(2 * 2 ** 17);
  });

  it('have the slopes that each has alone', () => {
    const slopesOf = (system: EngineSystem): Float64Array => {
      const slopes = new Float64Array(system.dimension);
      system.timeSlopes(1, initialState(system, 1, 10), slopes);
      return slopes;
    };
    const alone = engines.map((engine) => slopesOf(engineSystem(engine)));
    const systems = engines.map((engine) => engineSystem(engine));
    for (let round = 0; round < 3; round += 1) expect(systems.map(slopesOf)).toEqual(alone);
  });

  it.each([
    ['that choose anew at every state', false],
    ['that keep their choice for a step', true],
  ])('go the way that each goes alone, with steps %s', (_which, keepsDonors) => {
    const alone = travellers(keepsDonors);
    for (const one of alone) for (let round = 0; round < ROUNDS; round += 1) one.goOn();
    const together = travellers(keepsDonors);
    for (let round = 0; round < ROUNDS; round += 1) for (const one of together) one.goOn();
    expect(together.map(({ y }) => y)).toEqual(alone.map(({ y }) => y));
  });
});

/** Numbers of nobody, laid out until the next to be laid out comes behind the first of them; returns that. */
function fill(): Seat {
  for (;;) {
    const seat = new Seat(new Float64Array(1000));
    if (takeEngineSeat(seat, noLaws) === FIRST_FREE) return seat;
  }
}

describe.each([
  ['that chooses anew at every state', false],
  ['that keeps its choice', true],
])('a step %s', (_which, keepsDonors) => {
  const engine = buildEngine(shipped('cider-press.yaml'));

  it('may take the place of its own engine', () => {
    const alone = new Traveller(engineSystem(engine), keepsDonors);
    alone.goOn();
    fill();
    const own = new Traveller(engineSystem(engine), keepsDonors);
    fill();
    own.goOn();
    expect(own.y).toEqual(alone.y);
  });

  it.each([0, 1, 2, 3, 4, 5])('may begin anywhere: %d fillings on', (fillings) => {
    const alone = new Traveller(engineSystem(engine), keepsDonors);
    const own = new Traveller(engineSystem(engine), keepsDonors);
    for (let round = 0; round < ROUNDS; round += 1) alone.goOn();
    for (let round = 0; round < ROUNDS; round += 1) {
      own.goOn();
      for (let i = 0; i < fillings; i += 1) fill();
    }
    expect(own.y).toEqual(alone.y);
  });
});

describe('a step whose numbers were given up while it was under way', () => {
  it('is an error, and no wrong number', () => {
    const system = engineSystem(buildEngine(shipped('cider-press.yaml')));
    const step = new RosenbrockStep(new AngleProblem(system, false), turningTolerances(system, 1e-3));
    const y = initialState(system, 0.2, 20);
    holdEnergy(system, y);
    step.begin(0.2, y, 0.01);
    expect(step.attempt(0.01)).toBeGreaterThan(0);
    fill();
    fill();
    const givenUp = /given up while it was under way/;
    expect(() => step.attempt(0.01)).toThrow(givenUp);
    expect(() => step.component(SLOT.time, 0.5)).toThrow(givenUp);
    expect(() => {
      step.end(y);
    }).toThrow(givenUp);
    step.finish();
    step.begin(0.2, y, 0.01);
    expect(step.attempt(0.01)).toBeGreaterThan(0);
  });
});

describe('a tangent whose place is given up between two journeys', () => {
  it('goes on from where it had come to', () => {
    const engine = buildEngine(shipped('cider-press.yaml'));
    const followed = (meanwhile: () => void): Float64Array => {
      const own = new Traveller(engineSystem(engine), false);
      own.follow();
      for (let round = 0; round < ROUNDS; round += 1) {
        own.goOn();
        meanwhile();
      }
      return own.tangent.tangent();
    };
    const undisturbed = followed(() => undefined);
    const disturbed = followed(() => {
      fill();
      fill();
    });
    expect(disturbed).toEqual(undisturbed);
    expect(undisturbed.some((value) => value !== 0 && value !== 1)).toBe(true);
  });
});

describe('an engine too large for the memory', () => {
  const slopesOf = (): number => {
    const system = engineSystem(buildEngine(shipped('cider-press.yaml')));
    const slopes = new Float64Array(system.dimension);
    system.timeSlopes(1, initialState(system, 1, 10), slopes);
    return slopes[SLOT.speed]!;
  };

  it('is refused in words, and hurts no other', () => {
    const before = slopesOf();
    const seat = new Seat(new Float64Array(2 ** 21));
    expect(() => takeEngineSeat(seat, noLaws)).toThrow(
      'an engine of 2097152 numbers is too large for the kernel',
    );
    expect(() => takeStepSeat(seat, noHost)).toThrow('too large for the kernel');
    expect(slopesOf()).toBe(before);
  });

  it('is not one that needs more than is used in turn by others', () => {
    const words = Float64Array.from({ length: 2 ** 18 }, (_, i) => i);
    const base = takeEngineSeat(new Seat(words), noLaws);
    expect(doubles.subarray(base, base + words.length)).toEqual(words);
    expect(slopesOf()).toBeLessThan(Infinity);
  });
});
