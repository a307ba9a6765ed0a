/** Share of a number by which a difference quotient moves it: the square root of its rounding. */
export const SHARE = 2 ** -26;
