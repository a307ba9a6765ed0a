/** Share of a number by which a difference quotient moves it: the square root of its rounding. */
import { pow } from '../numerics/elementary/power.ts';

export const SHARE = pow(2, -26);
