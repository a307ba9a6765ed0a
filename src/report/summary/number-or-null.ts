/** JSON has no NaN and no infinity; what is not a number, or not there, is null. Nine digits, so that bytes repeat. */
export function numberOrNull(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) ? null : Number(value.toPrecision(9)) + 0;
}
