/** What a run yields. SI throughout, absolute pressures, radians; flows in kg per cycle unless said otherwise. */
import type { GasOrigin } from '../gas/gas.ts';
import type { BarrelMaterial } from '../parts/barrel-materials.ts';
import type { PassageRole } from '../parts/passage.ts';
import type { DerivedSize, ValveEvents } from '../parts/valve-gears/valve-gear.ts';
import type { CompressorVerdict } from './compressor-verdict.ts';
import type { SupplyTrace } from './supply/supply-trace.ts';
import type { Drive } from './drive-result.ts';
import type { Outcome } from './outcome.ts';
import type { Trials } from './trials.ts';

/** Columns of equal length. */
export interface Trace {
  /** Engine time [s]. */
  readonly time: Float64Array;
  /** Crank angle after top dead centre [rad], growing turn after turn. */
  readonly crankAngle: Float64Array;
  /** [rad/s]. */
  readonly speed: Float64Array;
  /** [Pa]; of the cylinder, that of the first working end. */
  readonly chestPressure: Float64Array;
  readonly cylinderPressure: Float64Array;
}

/** One cylinder end through the settled turn, at the same crank angles as the profile it belongs to. */
export interface EndProfile {
  /** "cylinder", or which end of which cylinder: "crank end", "cylinder 2", "cylinder 2, crank end". */
  readonly name: string;
  /** Crank angle of its own dead centre, where its volume is smallest [rad]. */
  readonly deadCentre: number;
  readonly sweptVolume: number;
  readonly clearanceVolume: number;
  readonly volume: Float64Array;
  readonly pressure: Float64Array;
  readonly temperature: Float64Array;
  /** Effective areas Cd·A [m²]. */
  readonly admissionArea: Float64Array;
  readonly exhaustArea: Float64Array;
}

/** One settled turn, at every whole crank degree from 0 to 360. */
export interface CycleProfile {
  /** [rad], 0 to 2π. */
  readonly crankAngle: Float64Array;
  /** Time since top dead centre [s]. */
  readonly time: Float64Array;
  readonly speed: Float64Array;
  readonly chestPressure: Float64Array;
  readonly chestTemperature: Float64Array;
  /** Every working end, the cover end of the first cylinder first. */
  readonly ends: readonly [EndProfile, ...EndProfile[]];
  /** Torques at the crankshaft [N m]; those of gas and masses drive when positive, friction and load resist. */
  readonly gasTorque: Float64Array;
  /** Of the pistons' inertia and weight. */
  readonly inertiaTorque: Float64Array;
  readonly frictionTorque: Float64Array;
  readonly loadTorque: Float64Array;
  /** Mass flow [kg/s] of every passage, in the order of `passages`. */
  readonly massFlow: readonly Float64Array[];
}

/** What went through one passage in a turn. */
export interface PassageTotal {
  readonly name: string;
  readonly role: PassageRole;
  /** Names of places: "supply", "valve chest", "cylinder", "room"… */
  readonly from: string;
  readonly to: string;
  /** Net mass per cycle [kg], positive from → to. */
  readonly mass: number;
}

/** Where the air of one cycle went; the shares add up to one. */
export interface AirLedger {
  /** Air that entered from the supply in one cycle [kg]. */
  readonly mass: number;
  readonly workedShare: number;
  readonly leakShare: number;
  readonly blowThroughShare: number;
  readonly clearanceShare: number;
  /** The leak share path by path. */
  readonly leaks: readonly { readonly name: string; readonly share: number }[];
}

/**
 * Where the work of one cycle went [J]: indicated = bearings + pistons and glands + valve gear + load + gain of kinetic
 * energy; the weight of the pistons gives back over a turn what it takes.
 */
export interface WorkLedger {
  readonly indicated: number;
  readonly bearings: number;
  readonly piston: number;
  readonly valveGear: number;
  readonly load: number;
  readonly kineticGain: number;
  /** Heat from the wall into the gas. */
  readonly wallHeat: number;
}

/** Between which values something moves in a turn. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** Lowest and highest pressure [Pa] and temperature [K] of a place in a turn. */
export interface PlaceExtremes {
  /** "valve chest", or the name of a cylinder end. */
  readonly place: string;
  readonly pressure: Range;
  readonly temperature: Range;
}

/** What one turn of a settled engine adds up to. */
export interface SettledTurn {
  /** Mean speed [rad/s]: 2π over the period. */
  readonly speed: number;
  readonly period: number;
  readonly sweptVolume: number;
  readonly work: WorkLedger;
  /** Work over swept volume [Pa]: indicated, and into the load. */
  readonly indicatedMeanEffectivePressure: number;
  readonly brakeMeanEffectivePressure: number;
  /** Mean power into the load [W]. */
  readonly brakePower: number;
  /** Air from the supply: [kg/s] and as ANR [m³/s]; another gas at the pressure and temperature of ANR. */
  readonly airMassFlow: number;
  readonly airFlowAnr: number;
  readonly air: AirLedger;
  readonly passages: readonly PassageTotal[];
  readonly events: ValveEvents;
  /** Cut-off as a share of the stroke. */
  readonly cutOffFraction: number;
}

/** The same turn with what it goes through on its way. */
export interface SettledCycle extends SettledTurn {
  /** (ω_max − ω_min)/ω_mean. */
  readonly speedFluctuation: number;
  readonly extremes: readonly PlaceExtremes[];
  /** Lowest temperature [K] of the air that leaves by the exhaust port. */
  readonly coldestExhaust: number;
  readonly profile: CycleProfile;
}

/** How an engine that does not run stands under air: what reaches it, and what leaks away meanwhile. */
export interface StandStill {
  readonly chestPressure: number;
  readonly cylinderPressure: number;
  /** Air that the supply loses all the time, through every way out [m³/s ANR]. */
  readonly airFlowAnr: number;
  /** Leaks that flow now, the largest first [kg/s]. */
  readonly leaks: readonly { readonly name: string; readonly massFlow: number }[];
}

/** The water in the air of a settled engine; temperatures in K. */
export interface Moisture {
  /** Pressure under which the air is reckoned to have cooled to room temperature [Pa]. */
  readonly receiverPressure: number;
  /** Water in the air that is taken in from the room, then what drops out, and what goes through the engine [kg/s]. */
  readonly takenIn: number;
  readonly condensed: number;
  readonly carriedOn: number;
  /** Dew point, or below freezing frost point, of the room air. */
  readonly roomDewPoint: number;
  /** Dew point of the same air under receiver pressure, before any water has dropped out. */
  readonly pressureDewPoint: number;
  /** Dew or frost point of the air that goes through the engine, back at room pressure. */
  readonly exhaustDewPoint: number;
}

/** Residuals as shares of the throughput of the whole run and of the settled cycle, whichever is worse. */
export interface LedgerResiduals {
  readonly mass: number;
  readonly energy: number;
}

/** What the calculation cost. */
export interface Counters {
  readonly derivativeCalls: number;
  readonly acceptedSteps: number;
  readonly turns: number;
}

/** The whole story of one engine, from rest to where it ends. */
export interface RunResult {
  readonly title: string;
  readonly notes: string;
  readonly outcome: Outcome;
  readonly trace: Trace;
  readonly settled?: SettledCycle;
  /** Only for an engine that came to rest. */
  readonly standStill?: StandStill;
  readonly compressor?: CompressorVerdict;
  /** Only for an engine that has settled on air from the room. */
  readonly moisture?: Moisture;
  /** What the engine can drive and from where it starts, where that was asked for. */
  readonly drive?: Drive;
  /** What changes would do to it, for an engine that does not run, where that was asked for. */
  readonly trials?: Trials;
  /** Half an hour from a full receiver, with it, for an engine that settles and has a compressor. */
  readonly supplyTrace?: SupplyTrace;
  readonly ledger: LedgerResiduals;
  readonly counters: Counters;
  /** What the engine was given, as far as pictures and cautions need it. */
  readonly engine: EngineFacts;
}

/** What pictures and words need to know about the working gas. */
export interface GasFacts {
  readonly name: string;
  readonly origin: GasOrigin;
  readonly heatCapacityRatio: number;
  readonly criticalPressureRatio: number;
}

/** The barrel, as far as it is described. */
export interface BarrelFacts {
  readonly material: BarrelMaterial | undefined;
  readonly wallThickness: number | undefined;
}

/** One working end of the engine. */
export interface EndFacts {
  /** As in its profile. */
  readonly name: string;
  readonly deadCentre: number;
  /** Counted from its own dead centre. */
  readonly events: ValveEvents;
}

/** The engine as it was given. SI; volumes are of all its ends together. */
export interface EngineFacts {
  readonly valveGearKind: string;
  /** Only for an engine that is to run the other way than its gear is described for; all angles then count that way. */
  readonly reverse?: { readonly gearServes: boolean };
  readonly gas: GasFacts;
  readonly atmosphericPressure: number;
  readonly atmosphericTemperature: number;
  readonly relativeHumidity: number;
  readonly supplyPressure: number;
  /** Pressure in front of the regulator, when one that droops is described. */
  readonly regulatorInlet?: number;
  /** Working pressure of the weakest of hose, fittings and chest, if it was given. */
  readonly ratedPressure: number | undefined;
  readonly barrel: BarrelFacts;
  readonly chestVolume: number;
  readonly clearanceVolume: number;
  readonly sweptVolume: number;
  readonly bore: number;
  readonly stroke: number;
  readonly rodLength: number;
  readonly momentOfInertia: number;
  readonly flywheelRim?: { readonly radius: number; readonly density: number };
  readonly receiver?: { readonly volume: number; readonly pressure: number };
  /** Every working end; the events and the cut-off after it are those of the first. */
  readonly ends: readonly [EndFacts, ...EndFacts[]];
  readonly events: ValveEvents;
  readonly cutOffFraction: number;
  readonly derivedSizes: readonly DerivedSize[];
  /** Torque of the load [N m] at `speed`, sampled for pictures. */
  readonly loadCurve: { readonly speed: Float64Array; readonly torque: Float64Array };
}
