/**
 * What any integrator of ours can do: carry a state from one place of the independent variable to another, and stop on
 * the way where an event function crosses zero. Which method does it is of no concern to the caller.
 */

import type { TangentFlow } from './tangent-flow.ts';

export interface OdeProblem {
  readonly dimension: number;
  /**
   * The components on which any slope depends; default all. The others only add up, and are no work for a method that
   * solves linear systems.
   */
  readonly coupled?: readonly number[];
  /** True when no slope depends on x itself. */
  readonly autonomous?: boolean;
  /**
   * Writes ∂slope/∂component of every coupled component, row by row, at a state and its slopes, and ∂slope/∂x unless the
   * problem is autonomous; returns the work it was, in calls of the derivative. Without it, methods that need a Jacobian
   * take difference quotients.
   */
  jacobian?(
    x: number,
    y: Float64Array,
    slopes: Float64Array,
    jacobian: Float64Array,
    drift: Float64Array,
  ): number;
  /** Choices within the slopes that are best kept for a whole step. */
  readonly choices?: StepChoices | undefined;
  /** For methods that step in the kernel: the same slopes, which are known there. */
  readonly inKernel?: KernelProblem | undefined;
  /** Writes dy/dx into `slopes`. Must not allocate, must not keep the arrays, must not change `y`. */
  derivative(x: number, y: Float64Array, slopes: Float64Array): void;
}

/** An engine whose slopes the kernel, src/kernel, knows. */
export interface KernelProblem {
  readonly against: 'angle' | 'time';
  /** Against time: +1 or −1 while it turns that way, 0 while it stands. */
  readonly direction: number;
  /** What a Jacobian costs, in calls of the derivative. */
  readonly jacobianCost: number;
  /** Makes the kernel be about this engine. */
  sit(): void;
}

/**
 * A choice that slopes make anew at every state, such as from which side a flow comes, gives them a kink. A step that keeps
 * it meets smooth slopes, and ends where the choice would be another.
 */
export interface StepChoices {
  /** As at the state for which slopes were last asked for, until they are released. */
  keep(): void;
  release(): void;
  /** After a release, back to those that were kept. */
  restore(): void;
  /** Whether those kept are no longer right. */
  areStale(x: number, y: Float64Array): boolean;
}

export interface Tolerances {
  /** Relative to each component. */
  readonly relative: number;
  /** Absolute, above zero, per component, in its own unit; Infinity for components that must not steer the step. */
  readonly absolute: Float64Array;
}

/** Reads one component of the state at some place; an event asks only for the components it needs. */
export type ComponentReader = (component: number) => number;

/** An event happens where `value` goes from above zero to zero or below. */
export interface EventFunction {
  value(x: number, component: ComponentReader): number;
}

/** An accepted step, valid only during the call that hands it over. */
export interface AcceptedStep {
  readonly from: number;
  readonly to: number;
  /** One component of the state at `x` within the step. */
  component(index: number, x: number): number;
  /** Writes the interpolated state at `x` within the step. */
  interpolate(x: number, out: Float64Array): void;
}

export interface Journey {
  readonly events?: readonly EventFunction[];
  readonly onStep?: (step: AcceptedStep) => void;
  /** A step in which a component stays above a value has no event in it, and need not be shown to `onStep`. */
  readonly calmAbove?: { readonly component: number; readonly value: number } | undefined;
  /** To be followed along the way, by a method that goes by Jacobians. */
  readonly tangent?: TangentFlow;
  /** Most steps to spend on this journey. */
  readonly stepLimit: number;
  /** Journeys with the same number here begin in like places: what was learnt at the last beginning serves again. */
  readonly likeness?: number;
}

/** Why a journey ended, and where. The state array then holds the state there. */
export type Arrival =
  | { readonly reason: 'end'; readonly x: number }
  | { readonly reason: 'event'; readonly x: number; readonly event: number }
  | { readonly reason: 'step-limit'; readonly x: number }
  | { readonly reason: 'non-finite'; readonly x: number; readonly component: number };

export interface Integrator {
  /** Moves `y` from `x` to `xEnd` (xEnd > x), or to the first event. */
  advance(x: number, y: Float64Array, xEnd: number, journey: Journey): Arrival;
  readonly counters: { derivativeCalls: number; acceptedSteps: number };
}
