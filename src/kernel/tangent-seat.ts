/** The tangent that is seated, if any: the words at which its arrays begin. */
import * as header from './tangent-header.ts';
import { intAt, type Index } from './memory.ts';

/** 0 when none is followed. */
export let seated: Index = 0;
export let jacobianBefore: Index = 0;
export let tangent: Index = 0;
export let mean: Index = 0;
export let coupled: Index = 0;
export let before: Index = 0;
export let after: Index = 0;
export let numbers: Index = 0;

/** From now on the tangent whose numbers begin there is followed, by steps of the integrator that is seated; 0 for none. */
export function seatTangent(base: Index): void {
  seated = base;
  if (base === 0) return;
  jacobianBefore = base + intAt(base, header.JACOBIAN_BEFORE);
  tangent = base + intAt(base, header.TANGENT);
  mean = base + intAt(base, header.MEAN);
  coupled = base + intAt(base, header.COUPLED);
  before = base + intAt(base, header.BEFORE);
  after = base + intAt(base, header.AFTER);
  numbers = base + intAt(base, header.TANGENT_NUMBERS);
}
