/**
 * Shut air in and write down how the gauge falls: how large is the leak, and is it a gap or a hole?
 *
 * The interval takes in the steps of the gauge, the scatter about the fitted law and what is not known about the volume,
 * to which the leak is proportional; where the curve does not say which law holds, also what lies between the two.
 */
import { kindOf } from '../../kinds/kind.ts';
import { exp } from '../../numerics/elementary/exponential.ts';
import { decayMeasured, hardlyFell, stillCooling } from '../decay-finding.ts';
import { decayFits, shapeOf, type DecayFit, type DecayFits } from '../decay-fit.ts';
import {
  decayComplaints,
  decayParameters,
  decayTestOf,
  likelyCooling,
  type DecaySheet,
  type DecayTest,
} from '../decay-sheet.ts';
import type { Finding } from '../finding.ts';
import { readingError } from '../interval.ts';
import type { TestContext } from '../test-context.ts';

function build(own: DecaySheet, context: TestContext): Finding {
  const test = decayTestOf(own, context);
  const { time, pressure } = test;
  const fallen = pressure[0]! - pressure.at(-1)!;
  if (fallen < 3 * own.gauge_step) return hardlyFell(test, fallen);
  const fits = decayFits({
    gas: context.gas,
    volume: own.volume,
    temperature: test.conditions.temperature,
    against: context.atmosphericPressure,
    time,
    pressure,
    error: readingError(own.gauge_step),
    coolsIn: mayStillCool(test) ? likelyCooling(test) : undefined,
  });
  const shape = shapeOf(fits);
  const best = shape === undefined ? better(fits) : fits[shape];
  if (best.cooling === undefined) return decayMeasured(test, fits, best, 0);
  const wait = best.cooling.plain ? timeUntilCool(best, test) : LONG_ENOUGH * best.cooling.timeConstant;
  const left = time.filter((t) => t >= wait).length;
  const drowned = best.share > 0.5 || (best.cooling.plain && left < 5);
  return drowned ? stillCooling(test, best, wait) : decayMeasured(test, fits, best, wait);
}

/** Time constants after which less than a hundredth of the warmth is left. */
const LONG_ENOUGH = 5;

const mayStillCool = (test: DecayTest): boolean =>
  test.own.readings.columns.temperature === undefined && test.own.waited < LONG_ENOUGH * likelyCooling(test);

const better = ({ laminar, orifice }: DecayFits): DecayFit =>
  laminar.score <= orifice.score ? laminar : orifice;

/** Of the leak's own pace; below that the cooling no longer matters. */
const SLIGHT = 0.02;

/** When the pressure falls so slowly by cooling that the leak is all that counts [s after the first reading]. */
function timeUntilCool(fit: DecayFit, { time }: DecayTest): number {
  const { share, timeConstant } = fit.cooling ?? { share: 0, timeConstant: 1 };
  const span = time.at(-1)!;
  const pace = (t: number): number => (fit.leakOnly(t) - fit.leakOnly(t + span / 1000)) / (span / 1000);
  for (let t = 0; t < 50 * timeConstant; t += timeConstant / 10) {
    const byCooling = (fit.leakOnly(t) * share * exp(-t / timeConstant)) / timeConstant;
    if (byCooling < SLIGHT * pace(t)) return t;
  }
  return 50 * timeConstant;
}

export const pressureDecayTest = kindOf({
  kind: 'pressure decay',
  doc: 'Air is shut in and the gauge is read as it falls: leak, equivalent hole and gap.',
  parameters: decayParameters,
  complaints: decayComplaints,
  build,
});
