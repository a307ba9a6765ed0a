/**
 * What a change of clearance or timing can be expected to do, by the loss-free turn with the events as they are:
 *
 *   admission at p_s from v_a to v_c, expansion p V^γ to v_r, exhaust at p₀ to v_k, compression p V^γ back to v_a
 *
 *   W = p_s (v_c − v_a) + p_s V_c (1 − (V_c/V_r)^(γ−1))/(γ−1) − p₀ (v_r − v_k) − p₀ V_k ((V_k/V_a)^(γ−1) − 1)/(γ−1)
 *   A = p_s (v_c − v_a) + (p_s − p_k) V_a/γ,   p_k = p₀ (V_k/V_a)^γ          air taken, as p V at the supply's temperature
 *
 * v is what the piston has swept, V = v + clearance. The first law for the filling of what compression has left
 * (any engineering thermodynamics text) gives A. No leak, no throttling, no heat: the ratio of two such turns is what is
 * used, which the model itself bears out (tests/laws/next-change.test.ts).
 */
import { pow } from '../../numerics/elementary/power.ts';
import type { RunResult, SettledCycle } from '../../run/result.ts';
import { valueAt } from '../cycle-reading.ts';

/** Volumes of the first end [m³] and pressures [Pa absolute]. */
export interface IdealTurn {
  readonly supply: number;
  readonly room: number;
  readonly heatCapacityRatio: number;
  readonly clearance: number;
  /** Swept at the four events. */
  readonly admission: number;
  readonly cutOff: number;
  readonly release: number;
  readonly compression: number;
}

export function idealTurnOf({ events, profile }: SettledCycle, { engine }: RunResult): IdealTurn {
  const { volume, clearanceVolume } = profile.ends[0];
  const sweptAt = (angle: number): number => Math.max(0, valueAt(volume, angle) - clearanceVolume);
  const admission = sweptAt(events.admission);
  const cutOff = sweptAt(events.cutOff);
  return {
    supply: engine.supplyPressure,
    room: engine.atmosphericPressure,
    heatCapacityRatio: engine.gas.heatCapacityRatio,
    clearance: clearanceVolume,
    admission,
    cutOff,
    release: Math.max(cutOff, sweptAt(events.release)),
    compression: Math.max(admission, sweptAt(events.compression)),
  };
}

/** Pressure [Pa] of what the exhaust has shut in when the admission opens. */
export function compressedTo({ room, heatCapacityRatio, ...turn }: IdealTurn): number {
  const { clearance, compression, admission } = turn;
  return room * pow((clearance + compression) / (clearance + admission), heatCapacityRatio);
}

export function idealWork(turn: IdealTurn): number {
  const { supply, room, heatCapacityRatio, clearance, admission, cutOff, release, compression } = turn;
  const exponent = heatCapacityRatio - 1;
  const [va, vc, vr, vk] = [admission, cutOff, release, compression].map((v) => v + clearance) as [
    number,
    number,
    number,
    number,
  ];
  const pushing = supply * (cutOff - admission) + (supply * vc * (1 - pow(vc / vr, exponent))) / exponent;
  const against = room * (release - compression) + (room * vk * (pow(vk / va, exponent) - 1)) / exponent;
  return pushing - against;
}

export function idealAir(turn: IdealTurn): number {
  const { supply, heatCapacityRatio, clearance, admission, cutOff } = turn;
  const filling = ((supply - compressedTo(turn)) * (clearance + admission)) / heatCapacityRatio;
  return supply * (cutOff - admission) + filling;
}

/** What engines get out of the loss-free work at most, slow and tight; those that ship yield up to 0.85 of it. */
const BEST_YIELD = 0.85;

/** A change that takes less of the work than this leaves is no matter of life and death. */
const NO_LOSS = 0.995;

/** Work a turn [J] that the engine has to do at half its speed, its own drag as now: loads that grow leave some to spare. */
function neededSlowly({ work, speed }: SettledCycle, { engine: { loadCurve } }: RunResult): number {
  const sample = loadCurve.speed.findIndex((at) => at >= speed / 2);
  const load = 2 * Math.PI * (loadCurve.torque[Math.max(0, sample)] ?? 0);
  return work.indicated - work.load + Math.min(load, work.load);
}

/** What a changed turn promises against the present one. */
export interface Prospect {
  /** Work into the load, or where nothing is driven indicated work, in terms of the present. */
  readonly work: number;
  /** Air for as much work, in terms of the present. */
  readonly airPerWork: number;
  /** Turning more slowly, the engine would still get the work it then needs. */
  readonly suffices: boolean;
}

/** Undefined where the loss-free turn gives no work to compare with. */
export function prospectOf(
  cycle: SettledCycle,
  result: RunResult,
  change: (turn: IdealTurn) => Partial<IdealTurn>,
): Prospect | undefined {
  const now = idealTurnOf(cycle, result);
  const then = { ...now, ...change(now) };
  const { indicated, load } = cycle.work;
  const [workNow, airNow] = [idealWork(now), idealAir(now)];
  if (workNow <= 0 || airNow <= 0 || indicated <= 0) return undefined;
  const wanted = load > 0 ? load : indicated;
  const needed = (neededSlowly(cycle, result) * cycle.profile.ends[0].sweptVolume) / cycle.sweptVolume;
  const work = Math.max(0, wanted + indicated * (idealWork(then) / workNow - 1)) / wanted;
  return {
    work,
    airPerWork: idealAir(then) / airNow / work,
    suffices: work > NO_LOSS || BEST_YIELD * idealWork(then) > needed,
  };
}
