/**
 * The kernel twice, as WebAssembly and as plain TypeScript, each with a memory of its own: what both say to the last bit is
 * neither a slip of one of the compilers nor of what stands in for a file.
 */
import { setHost } from '../../src/kernel/host.ts';
import * as plainFunctions from '../../src/kernel/main.ts';
import { memoryBuffer } from '../../src/kernel/memory.ts';
import { FIRST_FREE } from '../../src/kernel/fixed-places.ts';
import {
  doubles,
  integers,
  kernel,
  Seat,
  takeEngineSeat,
  takeStepSeat,
  type ProblemSlopes,
} from '../../src/numerics/kernel.ts';
import { hostOf, type EngineLaws } from '../../src/numerics/kernel-laws.ts';
import { writeKernelTables } from '../../src/numerics/kernel-tables.ts';

export type Functions = Omit<typeof plainFunctions, 'seatEngine' | 'seatStep'>;

/** Numbers of an engine and of an integrator, laid out and seated in one kind of kernel. */
export interface Seated {
  readonly functions: {
    readonly [Name in keyof Functions]: (...args: Parameters<Functions[Name]>) => unknown;
  };
  readonly doubles: Float64Array;
  readonly integers: Int32Array;
  readonly engine: number;
  readonly step: number;
}

export interface Images {
  readonly engine: Float64Array;
  readonly laws: EngineLaws;
  readonly step: Float64Array;
  /** Of a problem that is no engine, over the memory they stand in. */
  readonly slopes: (doubles: Float64Array) => ProblemSlopes;
}

const nothing = new Float64Array(0);

export const noLaw = (): never => {
  throw new Error('nobody should have asked');
};
export const noLaws: EngineLaws = { opening: noLaw, flow: noLaw, drag: noLaw, load: noLaw, wallHeat: noLaw };

const noSlopes = (): ProblemSlopes => noLaw;

const plainDoubles = new Float64Array(memoryBuffer());
const plainIntegers = new Int32Array(memoryBuffer());
writeKernelTables(plainDoubles);

export function seatedPlain({
  engine = nothing,
  laws = noLaws,
  step = nothing,
  slopes = noSlopes,
}: Partial<Images>): Seated {
  const behind = FIRST_FREE + engine.length;
  plainDoubles.set(engine, FIRST_FREE);
  plainDoubles.set(step, behind);
  setHost(hostOf(plainDoubles, () => laws, slopes(plainDoubles)));
  if (engine.length > 0) plainFunctions.seatEngine(FIRST_FREE);
  if (step.length > 0) plainFunctions.seatStep(behind);
  return {
    functions: plainFunctions,
    doubles: plainDoubles,
    integers: plainIntegers,
    engine: FIRST_FREE,
    step: behind,
  };
}

export function seatedCompiled({
  engine = nothing,
  laws = noLaws,
  step = nothing,
  slopes = noSlopes,
}: Partial<Images>): Seated {
  const seats = { engine: new Seat(engine), step: new Seat(step) };
  const slopesHere = slopes(doubles);
  const sit = (): { engine: number; step: number } => ({
    engine: engine.length > 0 ? takeEngineSeat(seats.engine, laws) : 0,
    step: step.length > 0 ? takeStepSeat(seats.step, slopesHere) : 0,
  });
  sit();
  // The second may have had to take the place of the first.
  return { functions: kernel, doubles, integers, ...sit() };
}

/** The first word of so many from there on in which the two differ; undefined when they are the same to the last bit. */
export function difference(
  [a, b]: readonly [Seated, Seated],
  what: 'engine' | 'step',
  length: number,
): { readonly word: number; readonly plain: number; readonly compiled: number } | undefined {
  for (let word = 0; word < length; word += 1) {
    const plain = a.doubles[a[what] + word]!;
    const compiled = b.doubles[b[what] + word]!;
    if (!Object.is(plain, compiled)) return { word, plain, compiled };
  }
  return undefined;
}

export const seatedInBoth = (images: Partial<Images>): readonly [Seated, Seated] => [
  seatedPlain(images),
  seatedCompiled(images),
];
