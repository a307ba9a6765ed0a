/**
 * The kernel, src/kernel, as WebAssembly: the laws of an engine and the steps of the stiff method over one flat memory.
 *
 * There is one for all engines. Numbers of an engine or an integrator are laid into its memory when they are needed and
 * stay there until others need the room; whose turn it is takes its seat.
 */
import type { Host } from '../kernel/host.ts';
import { FIRST_FREE } from '../kernel/fixed-places.ts';
import { KERNEL_BYTES } from '../kernel/wasm/kernel-bytes.ts';
import { bytesOfBase64 } from './base64.ts';
import type { KernelFunctions } from './kernel-functions.ts';
import { hostOf, type EngineLaws, type StepHost } from './kernel-laws.ts';
import { writeKernelTables } from './kernel-tables.ts';

interface WebAssemblyMemory {
  readonly buffer: ArrayBuffer;
}

/** As much of it as is used here; it is no part of the language, but every engine of it has it. */
declare const WebAssembly: {
  readonly Memory: new (size: { initial: number; maximum: number }) => WebAssemblyMemory;
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (
    module: object,
    imports: { readonly env: object; readonly host: Host },
  ) => { readonly exports: KernelFunctions };
};

const PAGE = 65_536;
/** Pages that nobody touches take no memory. The compiler is told as many, .config/scripts/kernel.mjs. */
const PAGES = 256;
const WORDS = (PAGES * PAGE) / 8;

/** Words that are used in turn: enough for some dozens of engines, little enough to stay in the processor's cache. */
const USUAL_ROOM = 131_072;

const noLaw = (): never => {
  throw new Error('no engine is seated');
};
const noLaws: EngineLaws = { opening: noLaw, flow: noLaw, drag: noLaw, load: noLaw, wallHeat: noLaw };

const noStep = (): never => {
  throw new Error('no integrator is seated');
};
/** Of numbers that are those of no problem. */
export const nobody: StepHost = {
  slopes: noStep,
  look: noStep,
  attempt: noStep,
  lengthToChange: noStep,
  show: noStep,
};

let laws = noLaws;
let stepHost = nobody;

const memory = new WebAssembly.Memory({ initial: PAGES, maximum: PAGES });

/** The memory of the kernel, word by word; whole numbers stand in the first half of theirs. */
export const doubles = new Float64Array(memory.buffer);
export const integers = new Int32Array(memory.buffer);

writeKernelTables(doubles);

export const kernel = new WebAssembly.Instance(new WebAssembly.Module(bytesOfBase64(KERNEL_BYTES)), {
  env: { memory },
  host: hostOf(
    doubles,
    () => laws,
    () => stepHost,
  ),
}).exports;

/** Numbers with a place in the memory of the kernel. */
export class Seat {
  /** The word at which they begin; 0 while they are not laid out. */
  base = 0;
  readonly image: Float64Array;
  private readonly keepsWhatIsWritten: boolean;

  /** What is written there is gone with the place, unless it is to be kept. */
  constructor(image: Float64Array, { keepsWhatIsWritten } = { keepsWhatIsWritten: false }) {
    this.image = image;
    this.keepsWhatIsWritten = keepsWhatIsWritten;
  }

  giveUp(): void {
    if (this.keepsWhatIsWritten) this.image.set(doubles.subarray(this.base, this.base + this.image.length));
    this.base = 0;
  }
}

/** Seats that are laid out, by the order of their places. */
let laidOut: Seat[] = [];
let room = USUAL_ROOM;
let nextFree = FIRST_FREE;
let seatedEngine: Seat | undefined;
let seatedStep: Seat | undefined;
let seatedTangent: Seat | undefined;

/** Gives a seat a place, and takes theirs from those that were there before. */
function layOut(seat: Seat): void {
  const { length } = seat.image;
  let needed = room;
  // Enough for an engine behind its step, wherever that stands.
  while (4 * length > needed) needed *= 2;
  if (FIRST_FREE + needed > WORDS)
    throw new Error(`an engine of ${length} numbers is too large for the kernel`);
  room = needed;
  if (nextFree + length > FIRST_FREE + room) nextFree = FIRST_FREE;
  const end = nextFree + length;
  for (const other of laidOut)
    if (other.base < end && other.base + other.image.length > nextFree) other.giveUp();
  laidOut = laidOut.filter(({ base }) => base !== 0);
  laidOut.push(seat);
  seat.base = nextFree;
  doubles.set(seat.image, nextFree);
  nextFree = end;
}

/** Makes an engine the one that the kernel is about; the word at which its numbers begin. */
export function takeEngineSeat(seat: Seat, own: EngineLaws): number {
  if (seat === seatedEngine && seat.base !== 0) return seat.base;
  if (seat.base === 0) layOut(seat);
  laws = own;
  seatedEngine = seat;
  kernel.seatEngine(seat.base);
  return seat.base;
}

/** The same for an integrator, about which the kernel asks `own`. */
export function takeStepSeat(seat: Seat, own: StepHost): number {
  if (seat === seatedStep && seat.base !== 0) return seat.base;
  if (seat.base === 0) layOut(seat);
  stepHost = own;
  seatedStep = seat;
  kernel.seatStep(seat.base);
  return seat.base;
}

/** The same for the tangent that the steps of the integrator are to carry along; undefined for none. */
export function takeTangentSeat(seat: Seat | undefined): number {
  const base = seat?.base ?? 0;
  if (seat === seatedTangent && (seat === undefined || base !== 0)) return base;
  if (seat && base === 0) layOut(seat);
  seatedTangent = seat;
  kernel.seatTangent(seat?.base ?? 0);
  return seat?.base ?? 0;
}
