import type { OdeProblem } from './integrator.ts';

/** The same problem with x as one more component, of slope 1, for methods that expect slopes not to depend on x. */
export function autonomousForm(problem: OdeProblem): OdeProblem {
  const n = problem.dimension;
  const y = new Float64Array(n);
  const slopes = new Float64Array(n);
  return {
    dimension: n + 1,
    autonomous: true,
    ...(problem.coupled ? { coupled: [...problem.coupled, n] } : {}),
    derivative: (_x, state, out) => {
      for (let i = 0; i < n; i += 1) y[i] = state[i]!;
      problem.derivative(state[n]!, y, slopes);
      out.set(slopes);
      out[n] = 1;
    },
  };
}
