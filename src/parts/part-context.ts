/** What a part may know about the engine it is built into. */
import type { Gas } from '../gas/gas.ts';
import type { CrankTrain } from './crank-train.ts';

export interface PartContext {
  readonly gas: Gas;
  /** The crank train as the part's own cylinder end sees it. */
  readonly crank: CrankTrain;
  /** Cylinder bore [m]. */
  readonly bore: number;
  /** The cylinder has a working crank end too. */
  readonly doubleActing: boolean;
  /** Diameter of the piston rod [m]; zero where none passes a gland. */
  readonly rodDiameter: number;
  /** Pressure [Pa] and temperature [K] of the room. */
  readonly atmosphericPressure: number;
  readonly atmosphericTemperature: number;
}
