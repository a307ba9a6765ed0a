/**
 * The quick tests by which `npm run mutation` judges one area of the code; slow ones would cost hours
 * there. Most mutants are alive while modules load and test files collect, so each is judged by all of these tests up to
 * the first that fails, and what counts is the time of one round:
 * - modules are loaded once for all test files, and so no test here may replace a module (`vi.mock`);
 * - mathjs, a thousand small files, and its like are bundled beforehand;
 * - the quick ones come first.
 *
 * The kernel stays as it was compiled before anything was broken: what is broken in src/kernel runs as plain TypeScript, and
 * is compared with it.
 */
import { BaseSequencer, type Reporter, type TestSpecification, type Vitest } from 'vitest/node';
import everything from './vitest.config.ts';

/** Round by round: those that say most for their time, and those to ask about what the ones before left alive. */
const rounds: Readonly<Record<string, readonly (readonly string[])[]>> = {
  gas: [
    [
      'published/{adiabatic-expansion,air-properties,choked-flow,gap-leakage,gases,hose,humid-air,orifice-table,pressure-decay,sonic-conductance}',
      'exact/{conductance-in-series,orifice-decay,pressure-decay}',
      'unit/gas/*',
    ],
    [
      'exact/plane-films',
      'contracts/{passages,small-parts}',
      'laws/moisture',
      'unit/parts/regulator',
      'unit/measure/pressure-decay',
    ],
  ],
  parts: [
    [
      'exact/{disc-face-leak,oscillating-train,spool-mouth}',
      'published/{cam-laws,cam-motion,compressor-clearance,fits,flywheel,receiver,slider-crank,springs,valve-diagram}',
      'unit/parts/**/*',
    ],
    ['messages/messages', 'house/reference', 'contracts/{passages,small-parts}'],
    [
      'contracts/{descriptions,valve-gears}',
      'exact/{cut-cam,disc-overlap,double-acting,drawn-disc,plane-films,several-cylinders}',
    ],
  ],
  // What runs the kernel as plain TypeScript; all others run it compiled, and as it was.
  kernel: [['unit/kernel/*', 'laws/kernel-twice']],
  supply: [
    [
      'exact/receiver-course',
      'published/receiver',
      'laws/moisture',
      'unit/run/{compressor-verdict,operating-points,outcome-words,supply-curve,torque-balance}',
    ],
    ['laws/{drooping-regulator,minutes-of-supply}'],
  ],
  run: [
    [
      'unit/run/{brisk-turning,drive,end-of-motion,measured-turn,one-turn,root-levels,settled-root,settled-turn,slow-turning,start-map}',
      'unit/run/{stepper,torque-at-speed,torque-balance,trace-recorder,trend,turn-unknowns,turning-view}',
      'unit/run/{waiting-at-rest,whole-run}',
    ],
    [
      'exact/{closed-cylinder,coast-down,speed-fluctuation}',
      'laws/{start-map,torque-curve,without-air}',
      'unit/run/motion',
    ],
  ],
};

const slow = new RegExp(
  '(descriptions|disc-overlap|drive|electric-valves|face-film|minutes-of-supply|motion|settle|start-map|stepper' +
    '|torque-at-speed|torque-curve|trend|whole-run)\\.test\\.ts$',
);

class QuickFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): string =>
      `${slow.test(moduleId) ? 1 : 0} ${moduleId.includes('/unit/') ? 0 : 1} ${moduleId}`;
    return Promise.resolve(files.toSorted((a, b) => (rank(a) < rank(b) ? -1 : 1)));
  }
}

/**
 * Stryker looks at tests alone: a file that a mutant keeps from loading has none, and the mutant would count as alive. Such
 * a file is given one that has failed.
 */
class FailedFilesReporter implements Reporter {
  #vitest: Vitest | undefined;

  onInit(vitest: Vitest): void {
    this.#vitest = vitest;
  }

  onTestRunEnd(): void {
    for (const file of this.#vitest?.state.getFiles() ?? []) {
      if (file.result?.state !== 'fail' || file.tasks.length > 0) continue;
      const { id, result } = file;
      const [name, fullName] = ['loads', `${file.name} > loads`];
      const mode = 'run';
      file.tasks.push({
        ...{
          id: `${id}_loads`,
          type: 'test',
          name,
          fullName,
          fullTestName: name,
          mode,
          file,
          suite: file,
          result,
        },
        ...{ meta: {}, annotations: [], artifacts: [], timeout: 0, context: {} as never },
      });
    }
  }
}

const area = process.env['TICKOVER_MUTATE'] ?? 'gas';
const round = Number(process.env['TICKOVER_MUTATE_ROUND'] ?? 1);
const include = (rounds[area]?.[round - 1] ?? []).map((name) => `tests/${name}.test.ts`);
const bundled = ['mathjs', 'fast-check', 'odex', 'ml-matrix', 'ml-levenberg-marquardt'];

export default {
  ...everything,
  test: {
    ...everything.test,
    projects: undefined,
    globalSetup: [],
    isolate: false,
    include,
    reporters: ['default', new FailedFilesReporter()],
    sequence: { sequencer: QuickFirst },
    deps: { optimizer: { ssr: { enabled: true, include: bundled } } },
  },
};
