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
  takeTangentSeat,
} from '../../src/numerics/kernel.ts';
import { hostOf, type EngineLaws, type StepHost } from '../../src/numerics/kernel-laws.ts';
import { writeKernelTables } from '../../src/numerics/kernel-tables.ts';

export type Functions = Omit<typeof plainFunctions, 'seatEngine' | 'seatStep' | 'seatTangent'>;

/** Numbers of an engine and of an integrator, laid out and seated in one kind of kernel. */
export interface Seated {
  readonly functions: {
    readonly [Name in keyof Functions]: (...args: Parameters<Functions[Name]>) => unknown;
  };
  readonly doubles: Float64Array;
  readonly integers: Int32Array;
  readonly engine: number;
  readonly step: number;
  readonly tangent: number;
}

export interface Images {
  readonly engine: Float64Array;
  readonly laws: EngineLaws;
  readonly step: Float64Array;
  /** Of a problem that is no engine, or of one who is shown steps, over the memory they stand in. */
  readonly host: (doubles: Float64Array) => Partial<StepHost>;
  readonly tangent: Float64Array;
}

const nothing = new Float64Array(0);

export const noLaw = (): never => {
  throw new Error('nobody should have asked');
};
export const noLaws: EngineLaws = { opening: noLaw, flow: noLaw, drag: noLaw, load: noLaw, wallHeat: noLaw };

export const noHost: StepHost = {
  slopes: noLaw,
  look: noLaw,
  attempt: noLaw,
  lengthToChange: noLaw,
  show: noLaw,
};

const plainDoubles = new Float64Array(memoryBuffer());
const plainIntegers = new Int32Array(memoryBuffer());
writeKernelTables(plainDoubles);

export function seatedPlain({
  engine = nothing,
  laws = noLaws,
  step = nothing,
  tangent = nothing,
  host = () => noHost,
}: Partial<Images>): Seated {
  const behind = FIRST_FREE + engine.length;
  plainDoubles.set(engine, FIRST_FREE);
  plainDoubles.set(step, behind);
  const last = behind + step.length;
  plainDoubles.set(tangent, last);
  const own = { ...noHost, ...host(plainDoubles) };
  setHost(
    hostOf(
      plainDoubles,
      () => laws,
      () => own,
    ),
  );
  if (engine.length > 0) plainFunctions.seatEngine(FIRST_FREE);
  if (step.length > 0) plainFunctions.seatStep(behind);
  plainFunctions.seatTangent(tangent.length > 0 ? last : 0);
  return {
    functions: plainFunctions,
    doubles: plainDoubles,
    integers: plainIntegers,
    engine: FIRST_FREE,
    step: behind,
    tangent: last,
  };
}

export function seatedCompiled({
  engine = nothing,
  laws = noLaws,
  step = nothing,
  tangent = nothing,
  host = () => noHost,
}: Partial<Images>): Seated {
  const seats = { engine: new Seat(engine), step: new Seat(step), tangent: new Seat(tangent) };
  const own = { ...noHost, ...host(doubles) };
  const sit = (): Pick<Seated, 'engine' | 'step' | 'tangent'> => ({
    engine: engine.length > 0 ? takeEngineSeat(seats.engine, laws) : 0,
    step: step.length > 0 ? takeStepSeat(seats.step, own) : 0,
    tangent: takeTangentSeat(tangent.length > 0 ? seats.tangent : undefined),
  });
  sit();
  // The second may have had to take the place of the first.
  return { functions: kernel, doubles, integers, ...sit() };
}

/** The first word of so many from there on in which the two differ; undefined when they are the same to the last bit. */
export function difference(
  [a, b]: readonly [Seated, Seated],
  what: 'engine' | 'step' | 'tangent',
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
