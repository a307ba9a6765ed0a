/** The task set to every method: how an engine is started, and how closely its settled turn is to be found. */

/** What is asked of a settled turn: mean speed [rad/s], and air drawn from the supply [kg]. */
export interface Turn {
  readonly speed: number;
  readonly air: number;
}

/** How near a method has to come to the settled turn, as shares of it. */
const WITHIN = { speed: 1e-3, air: 2e-3 };

/** Whether a turn is as near to the settled one as the answer has to be. */
export const isAnswer = (turn: Turn, settled: Turn): boolean =>
  Math.abs(turn.speed / settled.speed - 1) < WITHIN.speed &&
  Math.abs(turn.air / settled.air - 1) < WITHIN.air;

/** Start-up that is followed by CVODE [s]. */
export const START_UP_SECONDS = 20;

/** Pushes tried one after the other until one gets the engine running in forward equations alone [rad/s]. */
export const PUSHES = [5, 10, 20, 40, 80];

export interface Push {
  /** [rad], [rad/s]. */
  readonly angle: number;
  readonly speed: number;
}
