/** What stands where in the numbers of one integrator: counts, then offsets of arrays; step-seat.ts reads them. */

/** Counts. */
export const STEP_DIMENSION = 0;
/** Of components on which slopes depend, which have a column. */
export const WIDTH = 1;
/** What the slopes are of. */
export const KIND = 2;
export const STEERING_COUNT = 3;
export const ADDING_COUNT = 4;
/** Whether any component without a column has a tolerance. */
export const ADDING_STEERS = 5;

/** Offsets: the components that have a column, and the column of each component or −1. */
export const COLUMNS = 6;
export const COLUMN_OF = 7;
/** Components without a column; components with a tolerance. */
export const ADDING = 8;
export const STEERING = 9;
/** By component. */
export const ABSOLUTE = 10;
export const START = 11;
export const TRIAL = 12;
export const END = 13;
export const SCRATCH = 14;
export const OTHERS = 15;
/** ∂slope/∂x. */
export const DRIFT = 16;
/** By components, stage after stage. */
export const SLOPES = 17;
/** uᵢ by columns, stage after stage. */
export const STAGE_VALUES = 18;
/** ∂slope/∂component, row by row. */
export const JACOBIAN = 19;
/** The linear system, row by row, and what its factors need. */
export const MATRIX = 20;
export const PIVOTS = 21;
export const PER_ROW = 22;
export const PER_DIAGONAL = 23;
/** Σ wᵢ uᵢ by columns. */
export const SUMMED = 24;
/** By stage, of the place last asked about. */
export const READ_WEIGHTS = 25;
export const READ_SLOPE_WEIGHTS = 26;
export const STEP_NUMBERS = 27;
export const STEP_HEADER_LENGTH = 28;

/** Kinds. */
export const AGAINST_ANGLE = 0;
export const AGAINST_TIME = 1;
export const OF_HOST = 2;

/** Within STEP_NUMBERS. */
export const RELATIVE = 0;
/** +1, −1 or 0 at rest, of an engine against time. */
export const DIRECTION = 1;
/** Where the step begins, and the length of the last attempt. */
export const STEP_X = 2;
export const STEP_LENGTH = 3;
/** The share of it last asked about, and Σ wᵢ tᵢ for what drifts. */
export const READ_PLACE = 4;
export const SUMMED_CLOCK = 5;
/** Whether SUMMED holds the sums of that place. */
export const IS_SUMMED = 6;
/** How often slopes were asked for; the last component found without a finite one, or −1. */
export const CALLS = 7;
export const CULPRIT = 8;
/** What a Jacobian of an engine costs, in calls of the derivative. */
export const JACOBIAN_COST = 9;
/** Whether the host looks and tries, as for a problem that the kernel does not know or one with choices. */
export const IS_HOSTED = 10;
/** Of a journey: where its last step ends, the length for the next, and that at its beginning once it is known, or NaN. */
export const STEP_TO = 11;
export const PROPOSED = 12;
export const BEGINNING = 13;
export const TRIES_LEFT = 14;
export const ACCEPTED = 15;
export const REJECTED = 16;
/** A step in which this component stays above that value need not be shown; NaN when all are to be shown. */
export const CALM_COMPONENT = 17;
export const CALM_ABOVE = 18;
export const STEP_NUMBERS_LENGTH = 19;

/** How a journey can end. */
export const ARRIVED = 0;
export const STOPPED = 1;
export const NOT_FINITE = 2;
export const OUT_OF_STEPS = 3;
