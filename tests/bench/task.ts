/** The task set to every method: how an engine is started, and how closely its settled speed is to be found. */

/** How near a method has to come to the settled speed, as a share of it. */
export const SETTLED_WITHIN = 1e-3;

/** Start-up that is followed by CVODE [s]. */
export const START_UP_SECONDS = 20;

/** Pushes tried one after the other until one gets the engine running in forward equations alone [rad/s]. */
export const PUSHES = [5, 10, 20, 40, 80];

export interface Push {
  /** [rad], [rad/s]. */
  readonly angle: number;
  readonly speed: number;
}
