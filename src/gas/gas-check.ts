/**
 * Published values that a gas's data and laws must reproduce. They stand beside the data, so that a gas comes with its
 * proof; the tests walk them for every registered gas.
 */

/** What can be looked up in tables; SI units, ratios as they are. */
export type CheckedProperty =
  | 'density'
  | 'speed of sound'
  | 'heat capacity at constant pressure'
  | 'heat capacity at constant volume'
  | 'heat capacity ratio'
  | 'critical pressure ratio'
  | 'viscosity'
  | 'Prandtl number';

export interface GasCheck {
  readonly property: CheckedProperty;
  /** [K], [Pa absolute]; one standard atmosphere where the property does not ask for a pressure. */
  readonly at: { readonly temperature: number; readonly pressure?: number };
  readonly expected: number;
  /** Share of the expected value that the source's rounding, or the ideal gas, excuses. */
  readonly tolerance: number;
  /** Where the value is printed, and whether it was seen there. */
  readonly source: string;
}
