/**
 * From step to step of the Rosenbrock method, src/numerics/rosenbrock-integrator.ts: each as long as its error allows, until
 * the end of the journey or until somebody to whom a step is shown wants to stop.
 *
 * A step that misses its tolerance, or meets a slope that is not finite, is tried again shorter.
 */
import { hostAttempt, hostLengthToChange, hostLook, hostShow } from './host.ts';
import { at, intAt, put, type Index } from './memory.ts';
import { component, writeEnd } from './rosenbrock-reading.ts';
import { attempt, lookAhead } from './rosenbrock-step.ts';
import {
  ACCEPTED,
  ARRIVED,
  BEGINNING,
  CALM_ABOVE,
  CALM_COMPONENT,
  CULPRIT,
  IS_HOSTED,
  NOT_FINITE,
  OUT_OF_STEPS,
  PROPOSED,
  REJECTED,
  RELATIVE,
  STEP_TO,
  STOPPED,
  TRIES_LEFT,
} from './step-header.ts';
import * as step from './step-seat.ts';
import { followToHere, isFollowed, leaveBehind } from './tangent-flow.ts';

/** The error goes with the fourth power of the length; the next step aims at a little less than is allowed. */
const AIM = 0.9;
const LEAST_FACTOR = 0.2;
const MOST_FACTOR: number = 5;

/** Shortening after a step that could not be made at all. */
const RETREAT = 0.25;

/** A step is made this much longer if that spares a tiny last one. */
const STRETCH = 1.01;

/** A step shorter than this share of what is left, or of x, no longer leads anywhere. */
const SHORTEST = 2.220_446_049_250_313e-16;

/** The first step may change a component by about this share of its size. */
const FIRST_CHANGE = 0.01;

/** Places at which a step is looked at, as events.ts does. */
const PROBES: number = 6;

/** From the state in START to `xEnd`, or to where a step stopped; START then holds the state there, STEP_TO the place. */
export function travel(x: number, xEnd: number): Index {
  put(step.numbers, STEP_TO, x);
  put(step.numbers, BEGINNING, NaN);
  let outcome = ARRIVED;
  while (outcome === ARRIVED && at(step.numbers, STEP_TO) !== xEnd) outcome = stepOn(xEnd);
  if (outcome === ARRIVED && isFollowed() && look(xEnd, at(step.numbers, PROPOSED))) followToHere();
  return outcome;
}

/** One more step of a journey that is not over. */
function stepOn(xEnd: number): Index {
  const from = at(step.numbers, STEP_TO);
  const left = xEnd - from;
  const proposed = at(step.numbers, PROPOSED);
  if (!look(from, proposed < left ? proposed : left)) return NOT_FINITE;
  followToHere();
  const length = findStep(from, left);
  if (length !== length) return failure();
  if (at(step.numbers, ACCEPTED) === 0) put(step.numbers, BEGINNING, at(step.numbers, PROPOSED));
  count(ACCEPTED);
  put(step.numbers, STEP_TO, length === left ? xEnd : from + length);
  writeEnd();
  const isStopped = !isCalm() && hostShow() !== 0;
  leaveBehind(at(step.numbers, STEP_TO) - from);
  for (let i = 0; i < step.dimension; i += 1) put(step.start, i, at(step.end, i));
  return isStopped ? STOPPED : ARRIVED;
}

function count(what: Index): void {
  put(step.numbers, what, at(step.numbers, what) + 1);
}

function look(x: number, length: number): boolean {
  return intAt(step.numbers, IS_HOSTED) === 0 ? lookAhead(x) : hostLook(x, length) !== 0;
}

function tryStep(length: number): number {
  return intAt(step.numbers, IS_HOSTED) === 0 ? attempt(length) : hostAttempt(length);
}

/** Tries ever shorter steps: the length that was good, or NaN. */
function findStep(x: number, left: number): number {
  let interrupted: number = 0;
  if (at(step.numbers, PROPOSED) !== at(step.numbers, PROPOSED)) put(step.numbers, PROPOSED, firstLength());
  while (at(step.numbers, TRIES_LEFT) > 0) {
    put(step.numbers, TRIES_LEFT, at(step.numbers, TRIES_LEFT) - 1);
    const proposed = at(step.numbers, PROPOSED);
    const length = proposed * STRETCH >= left ? left : proposed;
    const error = tryStep(length);
    let next = length * lengthFactor(error);
    if (error <= 1) {
      // Behind a change it goes on as before.
      put(step.numbers, PROPOSED, Math.max(next, interrupted));
      return length;
    }
    const toChange = intAt(step.numbers, IS_HOSTED) === 0 ? 0 : hostLengthToChange();
    if (toChange > 0) {
      next = toChange;
      interrupted = Math.max(interrupted, length);
    }
    put(step.numbers, PROPOSED, next);
    count(REJECTED);
    if (next < SHORTEST * Math.max(left, Math.abs(x))) break;
  }
  return NaN;
}

function lengthFactor(error: number): number {
  if (error !== error) return RETREAT;
  return Math.min(MOST_FACTOR, Math.max(LEAST_FACTOR, AIM / Math.sqrt(Math.sqrt(error))));
}

/** A cautious length for a step of which nothing else is known. */
function firstLength(): number {
  const relative = at(step.numbers, RELATIVE);
  let quickest: number = 0;
  for (let n = 0; n < step.steeringCount; n += 1) {
    const i = intAt(step.steering, n);
    const size = at(step.absolute, i) / relative + Math.abs(at(step.start, i));
    quickest = Math.max(quickest, Math.abs(at(step.slopes, i)) / size);
  }
  return FIRST_CHANGE / quickest;
}

/** Whether nobody need see the step, as far as it is known by some places in it. */
function isCalm(): boolean {
  const least = at(step.numbers, CALM_ABOVE);
  const watched = intAt(step.numbers, CALM_COMPONENT);
  if (!(at(step.start, watched) > least && at(step.end, watched) > least)) return false;
  for (let probe: number = 1; probe < PROBES; probe += 1)
    if (!(component(watched, probe / PROBES) > least)) return false;
  return true;
}

function failure(): Index {
  const isLimit = at(step.numbers, CULPRIT) < 0 || at(step.numbers, TRIES_LEFT) === 0;
  return isLimit ? OUT_OF_STEPS : NOT_FINITE;
}
