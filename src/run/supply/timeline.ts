/** Minutes of supply: an engine, a receiver and a compressor over hours, from a dozen settled answers. */
import { anrVolumeFlow } from '../../gas/reference-atmosphere.ts';
import { gasNamed } from '../../gas/registry.ts';
import type { Compressor } from '../../parts/compressor.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';
import { outletPressure } from '../../parts/supply.ts';
import type { Outcome } from '../outcome.ts';
import { courseOf, type Course } from './course.ts';
import { settledAnswer, type AnswerOf } from './settled-answer.ts';
import { shedOf, type OfPressure, type Shed } from './shed.ts';
import { receiverForStarts, receiverForTime, startsPerHour, sufficient, type Sufficient } from './sizing.ts';
import { supplyCurve, type SupplyCurve } from './supply-curve.ts';
import { supplyTrace, type SupplyTrace } from './supply-trace.ts';

/** What was given, as far as words and pictures need it. SI, absolute pressures. */
export interface SupplyFacts {
  readonly atmosphericPressure: number;
  readonly heatCapacityRatio: number;
  readonly setPressure: number;
  readonly droopingRegulator: boolean;
  readonly compressor: Compressor;
}

/** Where it all ends. */
export type SupplyEnd =
  /** On and off for ever; the time from one start of the compressor to the next [s]. */
  | { readonly kind: 'cycles'; readonly period: number }
  /** The compressor never stops, and keeps this up: before the regulator, behind it, and at the shaft. */
  | {
      readonly kind: 'settles';
      readonly pressure: number;
      readonly supplyPressure: number;
      readonly speed: number;
    }
  /** The engine stops that long after the receiver was full [s]. */
  | { readonly kind: 'stops'; readonly time: number };

/** The running engine at one pressure in the receiver. */
export interface AnswerAtPressure {
  readonly pressure: number;
  readonly speed: number;
  readonly airFlowAnr: number;
}

/** SI, absolute pressures; flows as ANR [m³/s]. */
export interface SupplyTimeline {
  readonly runs: true;
  readonly title: string;
  readonly facts: SupplyFacts;
  /** How long one wants to run [s], which is also how far the trace goes. */
  readonly wantedTime: number;
  /** At the highest pressure in the receiver. */
  readonly speed: number;
  readonly demandAnr: number;
  /** What the compressor delivers at cut-out, at cut-in, and at the set pressure. */
  readonly deliveryAnr: { readonly cutOut: number; readonly cutIn: number; readonly setPressure: number };
  readonly end: SupplyEnd;
  /** Share of the time that the compressor runs, once the full receiver has been used up. */
  readonly duty: number;
  readonly startsPerHour: number;
  /** From a full receiver until it has fallen to the set pressure [s]; undefined if it never does, or stops before. */
  readonly timeToSag?: number;
  /** The running engine stops below this pressure in the receiver; known to a few hundredths of a bar. */
  readonly stallPressure: number;
  readonly sufficient: Sufficient;
  /** Receivers [m³] for the present compressor: that last as long as wanted, and that spare the motor. */
  readonly receiverForTime?: number;
  readonly receiverForStarts?: number;
  /** The settled answers it all rests on, by pressure in the receiver. */
  readonly answers: readonly AnswerAtPressure[];
  readonly trace: SupplyTrace;
  /** Air of the receiver unaccounted for, as a share of what the engine took. */
  readonly ledgerResidual: number;
}

/** The engine does not run on what the full receiver gives it, so there are no minutes to tell. */
export interface NoSupplyTimeline {
  readonly runs: false;
  readonly title: string;
  readonly outcome: Outcome;
}

/** Rounds in which the pressure that can be kept up is sought anew with the engine's answer at it. */
const REFINEMENTS = 2;

/** Of a description that has passed its checks, with its compressor, for a time one wants to run [s]. */
export function supplyTimeline(
  spec: EngineSpec,
  compressor: Compressor,
  wantedTime: number,
  answer: AnswerOf = settledAnswer,
): SupplyTimeline | NoSupplyTimeline {
  const highest = spec.supply.regulator ? compressor.cut_out : spec.supply.pressure;
  const first = supplyCurve(spec, highest, answer);
  if ('kind' in first) return { runs: false, title: spec.title, outcome: first };
  const { curve, shed, course } = refined(spec, compressor, wantedTime, first);
  const { duty, timeToSag } = course;
  const behind = supplyPressureOf(spec, curve);
  const lasting = receiverForTime(compressor, course, wantedTime);
  const sparing = receiverForStarts(compressor, course);
  return {
    runs: true,
    title: spec.title,
    facts: factsOf(spec, compressor),
    wantedTime,
    speed: curve.speed(highest),
    demandAnr: anrVolumeFlow(curve.demand(highest)),
    deliveryAnr: {
      cutOut: anrVolumeFlow(shed.delivery(shed.cutOut)),
      cutIn: anrVolumeFlow(shed.delivery(shed.cutIn)),
      setPressure: anrVolumeFlow(shed.delivery(shed.setPressure)),
    },
    end: endOf(course, curve, behind),
    duty,
    startsPerHour: startsPerHour(course),
    ...(timeToSag === undefined ? {} : { timeToSag }),
    stallPressure: curve.stallPressure,
    sufficient: sufficient(compressor, shed),
    ...(lasting === undefined ? {} : { receiverForTime: lasting }),
    ...(sparing === undefined ? {} : { receiverForStarts: sparing }),
    answers: curve.points.map(({ pressure, speed, airMassFlow }) => ({
      pressure,
      speed,
      airFlowAnr: anrVolumeFlow(airMassFlow),
    })),
    trace: supplyTrace(course, wantedTime, { speed: curve.speed, supplyPressure: behind }),
    ledgerResidual: Math.max(...course.legs.map(unaccounted)),
  };
}

interface Reckoned {
  readonly curve: SupplyCurve;
  readonly shed: Shed;
  readonly course: Course;
}

/** The course, with a settled answer added at the pressure where it settles. */
function refined(spec: EngineSpec, compressor: Compressor, wanted: number, first: SupplyCurve): Reckoned {
  let curve = first;
  for (let round = 0; ; round += 1) {
    const shed = shedOf(spec, compressor, curve);
    const course = courseOf(shed, round < REFINEMENTS ? 0 : wanted);
    if (round === REFINEMENTS) return { curve, shed, course };
    if (course.end.kind === 'settles') curve = curve.refinedAt(course.end.pressure);
  }
}

function endOf({ end, legs }: Course, { speed }: SupplyCurve, behind: OfPressure): SupplyEnd {
  if (end.kind === 'settles')
    return { ...end, supplyPressure: behind(end.pressure), speed: speed(end.pressure) };
  const time = legs.reduce((sum, { duration }) => sum + duration, 0);
  return end.kind === 'cycles' ? { ...end, period: time } : { ...end, time };
}

function factsOf({ atmosphere, supply, gas }: EngineSpec, compressor: Compressor): SupplyFacts {
  return {
    atmosphericPressure: atmosphere.pressure,
    heatCapacityRatio: gasNamed(gas).heatCapacityRatio,
    setPressure: supply.pressure,
    droopingRegulator: supply.regulator !== undefined,
    compressor,
  };
}

/** Pressure behind the regulator, by the pressure in front of it. */
function supplyPressureOf({ supply, gas, atmosphere }: EngineSpec, { demand }: SupplyCurve): OfPressure {
  return (receiver) =>
    outletPressure(supply, gasNamed(gas), {
      inlet: receiver,
      temperature: supply.temperature ?? atmosphere.temperature,
      massFlow: demand(receiver),
    });
}

const unaccounted = ({ stored, delivered, taken }: Course['legs'][number]): number =>
  taken === 0 ? 0 : Math.abs(stored - delivered + taken) / taken;
