/**
 * What stands where in the numbers of an engine: the first words are counts, then the offsets of its arrays. The model
 * writes them (src/model/engine-image.ts), engine-seat.ts reads them.
 */

/** Counts. */
export const PLACES = 0;
export const VOLUMES = 1;
export const PASSAGES = 2;
export const ENDS = 3;
export const CYLINDERS = 4;
export const ENDS_PER_CYLINDER = 5;
/** Number of a place, and of the first cylinder end among the volumes. */
export const CHEST = 6;
export const FIRST_END = 7;
export const DIMENSION = 8;
/** Whether the running totals are followed. */
export const TOTALS = 9;

/** Offsets: by place. */
export const PRESSURE = 10;
export const TEMPERATURE = 11;
/** 1/√T, and 24 μ R T. */
export const INVERSE_ROOT = 12;
export const LAMINAR = 13;
/** −1 and +1: which way the energy goes. */
export const WAYS = 14;
/** By volume. */
export const FIXED_VOLUME = 15;
/** By passage. */
export const MASS_FLOW = 16;
export const ENTHALPY_FLOW = 17;
export const FROM = 18;
export const TO = 19;
/** The place whose temperature its air has, now and as it was kept. */
export const DONOR = 20;
export const KEPT = 21;
/** The slots of the mass at either end, or −1 outside. */
export const SOURCE = 22;
export const SINK = 23;
/** ∂ṁ/∂p at either end, ∂ṁ/∂T upstream. */
export const PER_FROM = 24;
export const PER_TO = 25;
export const PER_TEMPERATURE = 26;
export const FLOW_CHANGE = 27;
export const ENTHALPY_CHANGE = 28;
export const MOVED_FLOW = 29;
/** Passages by their law, see flow-groups.ts. */
export const NOZZLES = 30;
export const GAPS = 31;
export const ELEMENTS = 32;
/** Lists: openings by table and by law, passages without a common law, passages that go by the clock. */
export const TABLES = 33;
export const LAWS = 34;
export const OTHERS = 35;
export const BY_THE_CLOCK = 36;
/** By cylinder. */
export const OFFSETS = 37;
export const LEVERS = 38;
export const SINES = 39;
export const COSINES = 40;
/** Drag of its gear [N m], or NaN where the gear itself must be asked. */
export const STEADY_DRAG = 41;
/** By end. */
export const DEAD_VOLUME = 42;
export const TRAVEL_AREA = 43;
export const COVER_AREA = 44;
export const BARREL_PER_VOLUME = 45;
export const END_VOLUME = 46;
export const VOLUME_RATE = 47;
export const WALL_HEAT = 48;
/** Waste of air, waste.ts. */
export const ADMISSION = 49;
export const EXHAUST = 50;
export const FIRST_LEAK = 51;
export const LEAKS = 52;
export const WASTE_SLOTS = 53;
/** Passages at a volume: those of volume v from FIRST_OF[v] up to FIRST_OF[v + 1] of PASSAGES_OF. */
export const PASSAGES_OF = 54;
export const FIRST_OF = 55;
/** By slot of the state. */
export const COLUMN = 56;
export const MOVED = 57;
export const MOVED_SLOPES = 58;
/** Numbers of the engine as a whole, and what it feels and remembers. */
export const NUMBERS = 59;
export const INSTANT = 60;
export const MEMORY = 61;
/** By cylinder: what the travel and its rates share, crank.ts. */
export const REACHES = 62;
export const HEADER_LENGTH = 63;

/** Within NUMBERS: of the gas. */
export const GAS_CONSTANT = 0;
export const HEAT_CAPACITY_AT_CONSTANT_PRESSURE = 1;
export const HEAT_CAPACITY_AT_CONSTANT_VOLUME = 2;
export const HEAT_CAPACITY_RATIO = 3;
/** μ = factor T^1.5/(T + constant). */
export const SUTHERLAND_FACTOR = 4;
export const SUTHERLAND_CONSTANT = 5;
export const CRITICAL_PRESSURE_RATIO = 6;
export const NOZZLE_FACTOR = 7;
export const EQUAL_PRESSURE_ROUNDING = 8;
export const DENSITY_TABLE_LOW = 9;
export const DENSITY_TABLE_PER_CELL = 10;
/** Of crank and masses. */
export const CRANK_RADIUS = 11;
export const ROD_LENGTH = 12;
/** Of a cylinder that rocks, or 0. */
export const TRUNNION_DISTANCE = 13;
export const FLYWHEEL_MOMENT = 14;
export const RECIPROCATING_MASS = 15;
export const WEIGHT_OUTWARDS = 16;
/** Of friction. */
export const RUNNING_TORQUE = 17;
export const BREAKAWAY_TORQUE = 18;
export const STRIBECK_SPEED = 19;
export const VISCOUS_TORQUE = 20;
export const PISTON_FORCE = 21;
export const PISTON_FORCE_PER_PRESSURE = 22;
export const GLAND_FORCE = 23;
export const GLAND_FORCE_PER_PRESSURE = 24;
/** Load = c₀ + c₁ ω + c₂ ω²; c₀ is NaN where the load itself must be asked. */
export const LOAD_CONSTANT = 25;
export const LOAD_PER_SPEED = 26;
export const LOAD_PER_SQUARE = 27;
/** Of the wall: how it gives heat, its temperature, a coefficient or factor, and a length and a radius. */
export const WALL_LAW = 28;
export const WALL_TEMPERATURE = 29;
export const WALL_COEFFICIENT = 30;
export const WALL_LENGTH = 31;
export const WALL_CRANK_RADIUS = 32;
/** Nodes of the table of ρ₂/ρ₁: value and slope by turns. */
export const DENSITY_NODES = 33;

/** Laws of the wall: the host's own, a steady coefficient, one that goes with the Reynolds number. */
export const WALL_OF_HOST = 0;
export const WALL_STEADY = 1;
export const WALL_CORRELATED = 2;

/** Within INSTANT: torques at the crank, and the moment of inertia. */
export const GAS_TORQUE = 0;
export const INERTIA_TORQUE = 1;
export const GRAVITY_TORQUE = 2;
export const BEARING_TORQUE = 3;
export const PISTON_TORQUE = 4;
export const GEAR_TORQUE = 5;
export const LOAD_TORQUE = 6;
export const MOMENT_OF_INERTIA = 7;
export const INSTANT_LENGTH = 8;

/** Within MEMORY: the crank angle for which the position is set, that and the speed for which openings are. */
export const POSITION_ANGLE = 0;
export const OPENING_ANGLE = 1;
export const OPENING_SPEED = 2;
/** Whether the donors are kept, 0 or 1. */
export const ARE_KEPT = 3;

/** Flow laws. */
export const NOZZLE_LAW = 0;
export const GAP_LAW = 1;
export const ELEMENT_LAW = 2;

/**
 * A table: its length in words, the lag of its part behind the crank, the word its value goes to (counted from the base of
 * the engine), where it begins, its value elsewhere, how many segments; then their starts, the cells of each half segment,
 * where its nodes begin, and the nodes. src/parts/turn-table.ts has the same as objects.
 */
export const TABLE_LENGTH = 0;
export const TABLE_LAG = 1;
export const TABLE_TARGET = 2;
export const TABLE_BEGINS = 3;
export const TABLE_ELSEWHERE = 4;
export const TABLE_SEGMENTS = 5;
export const TABLE_STARTS = 6;

/** Of each opening that goes by a law of its own: the word its value goes to, and the lag. */
export const LAW_LENGTH = 2;
