/**
 * What passes while the receiver goes from one pressure to another. As pressure alone decides what is delivered and taken,
 * time is an integral over pressure,
 *
 *   t = ∫ dm/(delivery − demand),  m = p V/(R T)
 *
 * and so are the air delivered and the air taken. They are integrated each by itself, so that the ledger of the air is a
 * check: what is in the receiver must differ by what came in less what went out.
 */
import { exp } from '../../numerics/elementary/exponential.ts';
import { integrals, type Densities } from '../../numerics/gauss-kronrod.ts';
import type { Shed } from './shed.ts';

/** From one pressure to another [Pa], the compressor on or off throughout. */
export interface Way {
  readonly compressorOn: boolean;
  readonly from: number;
  readonly to: number;
}

/** Time [s], mass that the compressor delivered and mass that the engine took [kg]. */
export interface Passed {
  readonly time: number;
  readonly delivered: number;
  readonly taken: number;
}

/** Between one share of the way that is still to go and another; endless if it cannot be gone. */
export type Passing = (least: number, most: number) => Passed;

export const pressureAt = ({ from, to }: Way, left: number): number => to + left * (from - to);

const [TIME, DELIVERED, TAKEN] = [0, 1, 2];
const QUANTITIES = 3;

function densitiesOf({ massPerPascal, delivery, demand }: Shed, way: Way): Densities {
  const sense = Math.sign(way.to - way.from);
  const mass = massPerPascal * Math.abs(way.to - way.from);
  return (left, out) => {
    const pressure = pressureAt(way, left);
    const delivered = way.compressorOn ? delivery(pressure) : 0;
    const taken = demand(pressure);
    const pace = sense * (delivered - taken);
    if (pace <= 0) {
      out.fill(Infinity);
      return;
    }
    out[TIME] = mass / pace;
    out[DELIVERED] = (delivered * mass) / pace;
    out[TAKEN] = (taken * mass) / pace;
  };
}

const passed = ([time, delivered, taken]: Float64Array): Passed => ({
  time: time!,
  delivered: delivered!,
  taken: taken!,
});

export function passing(shed: Shed, way: Way): Passing {
  const densities = densitiesOf(shed, way);
  return (least, most) => passed(integrals(densities, QUANTITIES, [least, most]));
}

/**
 * The same where nothing more passes at the end of the way, and the time for each share grows beyond all bounds: between
 * two logarithms s of the whole way over what is left of it. The density by s is the share left times that by shares, and
 * goes to the time in which what is left shrinks to 1/e. The stretches are short; to halve them would be to follow the rounding of
 * flows that are nearly equal.
 */
export function passingByLogarithm(shed: Shed, way: Way): Passing {
  const densities = densitiesOf(shed, way);
  const byLogarithm: Densities = (logarithm, out) => {
    const left = exp(-logarithm);
    densities(left, out);
    for (let i = 0; i < QUANTITIES; i += 1) out[i]! *= left;
  };
  return (least, most) => passed(integrals(byLogarithm, QUANTITIES, [least, most], 1));
}
