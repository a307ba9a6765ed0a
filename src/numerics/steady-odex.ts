/**
 * The solver of the odex package with its step sizes reckoned alike on every machine.
 *
 * Two of its formulas raise an error to a fraction of one by `Math.pow`, whose last bit differs from engine to engine and moves
 * the ends of all later steps. Both results are overwritten here from the numbers they came from: after a line of the
 * extrapolation table, with err its error and nⱼ the intervals of line j,
 *
 *   step = |h| / min(s₂/f, max(f, (err/s₁)^(1/(2j+1))/σ)),   f = F₁^(1/(2j+1)),   work = aⱼ/step
 *
 * and after the interpolation of a step, step = h / max(errint^(1/(k+4)), 0.01) with errint the root mean square of its last
 * coefficient. What else the package raises are squares and whole powers of odd numbers up to 17, which V8 reckons exactly;
 * the logarithm of the tolerance only chooses a whole number, and powers of ten lie far from its borders.
 */
import { Solver, type Acceptance } from 'odex';
import { pow } from './elementary/power.ts';

/** The largest part of the step before that a step may lose or gain by its interpolation. */
const LEAST_ROOT = 0.01;

export class SteadyOdex extends Solver {
  override midEx(j: number, h: number, x: number, y: number[], slopes: number[]): boolean {
    const stable = super.midEx(j, h, x, y, slopes);
    if (stable && j > 0) {
      const { stepSizeFac1, stepSizeFac2, stepSafetyFactor1, stepSafetyFactor2 } = this.options;
      const exponent = 1 / (2 * j + 1);
      const least = pow(stepSizeFac1, exponent);
      const wanted = pow(this.err / stepSafetyFactor1, exponent) / stepSafetyFactor2;
      const factor = 1 / Math.min(stepSizeFac2 / least, Math.max(least, wanted));
      this.hh[j] = Math.min(Math.abs(h) * factor, this.hMax);
      this.w[j] = this.a[j]! / this.hh[j];
    }
    return stable;
  }

  override acceptStep(kc: number, h: number, x: number, y: number[], dz: number[]): Acceptance {
    const acceptance = super.acceptStep(kc, h, x, y, dz);
    if (acceptance.hoptde !== undefined)
      acceptance.hoptde = h / Math.max(this.interpolationRoot(kc), LEAST_ROOT);
    return acceptance;
  }

  /** The error of the interpolation, to the power at which a step follows it. */
  private interpolationRoot(kc: number): number {
    const { interpolationFormulaDegree, denseComponents } = this.options;
    const degree = 2 * kc - interpolationFormulaDegree + 1;
    const count = denseComponents.length;
    let sum = 0;
    for (let i = 0; i < count; i += 1) {
      const share = this.dens[(degree + 4) * count + i]! / this.scal[denseComponents[i]!]!;
      sum += share * share;
    }
    return pow(Math.sqrt(sum / count) * this.errfac[degree - 1]!, 1 / (degree + 4));
  }
}
