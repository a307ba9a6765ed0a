/** What stands where in the numbers of one tangent of a flow, by offsets of arrays; tangent-seat.ts reads them. */

/** ∂slope/∂component at the last place, and Φ: a row for each component, a column for each coupled one. */
export const JACOBIAN_BEFORE = 0;
export const TANGENT = 1;
/** A over the last step, with the rows of what merely adds up; by coupled components, a side of its systems and what was there. */
export const MEAN = 2;
export const SIDE = 3;
export const BEFORE = 4;
export const TANGENT_NUMBERS = 5;
export const TANGENT_HEADER_LENGTH = 6;

/** Within TANGENT_NUMBERS: the length of a step whose end is not followed yet; NaN until the flow has begun. */
export const BEHIND = 0;
export const TANGENT_NUMBERS_LENGTH = 1;
