/** What stands where in the numbers of one tangent of a flow, by offsets of arrays; tangent-seat.ts reads them. */

/** ∂slope/∂component at the last place, and Φ: a row for each component, a column for each coupled one. */
export const JACOBIAN_BEFORE = 0;
export const TANGENT = 1;
/** The mean over the last step of the Jacobian times its length; of coupled components alone it is A. */
export const MEAN = 2;
export const COUPLED = 3;
/** Φ of the coupled components as the last step began and as it ended. */
export const BEFORE = 4;
export const AFTER = 5;
export const TANGENT_NUMBERS = 6;
export const TANGENT_HEADER_LENGTH = 7;

/** Within TANGENT_NUMBERS: the length of a step whose end is not followed yet; NaN until the flow has begun. */
export const BEHIND = 0;
export const TANGENT_NUMBERS_LENGTH = 1;
