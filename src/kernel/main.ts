/** What the host may ask of the kernel. */
export { seatEngine } from './engine-seat.ts';
export { areDonorsStale, keepDonors, releaseDonors, restoreDonors } from './flows.ts';
export { angleDrift, angleJacobian, timeJacobian } from './jacobian.ts';
export { travel } from './journey.ts';
export { factorise, solve } from './linear-solver.ts';
export { setPosition } from './mechanics.ts';
export { areStale, look, lookAtRest } from './observe.ts';
export { component, writeEnd } from './rosenbrock-reading.ts';
export { attempt, evaluate, fillMatrix, lookAhead, shareOfTolerance } from './rosenbrock-step.ts';
export { angleSlopes, timeSlopes } from './slopes.ts';
export { seatStep } from './step-seat.ts';
export { seatTangent } from './tangent-seat.ts';
