/** What a part may know about the engine it is built into. */
import type { Gas } from '../gas/gas.ts';
import type { CrankTrain } from './crank-train.ts';

export interface PartContext {
  readonly gas: Gas;
  readonly crank: CrankTrain;
  /** Cylinder bore [m]. */
  readonly bore: number;
  /** Pressure [Pa] and temperature [K] of the room. */
  readonly atmosphericPressure: number;
  readonly atmosphericTemperature: number;
}
