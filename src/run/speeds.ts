/** Above the first an engine moves in crank angle, below the second in time again [rad/s]. */
export const BRISK = 1;
export const SLOW = 0.5;
