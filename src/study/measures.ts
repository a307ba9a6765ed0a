/** What a study notes about an engine, SI: figures that can be compared, aimed at and asked for. */
import type { CompressorVerdict } from '../run/compressor-verdict.ts';
import type { SettledTurn } from '../run/result.ts';

/** What is known of one engine. */
export interface Known {
  /** Only of an engine that runs. */
  readonly settled?: SettledTurn;
  readonly compressor?: CompressorVerdict;
  /** Share of the crank positions from which it starts unaided, where that was asked. */
  readonly startShare?: number;
  /** Smallest base circle [m] of its cams, where that was asked and it has any. */
  readonly baseCircle?: number;
}

type Measure = (known: Known) => number | undefined;

const ofTurn =
  (measure: (turn: SettledTurn) => number): Measure =>
  ({ settled }) =>
    settled && measure(settled);

const ofCompressor =
  (measure: (verdict: CompressorVerdict) => number | undefined): Measure =>
  ({ compressor }) =>
    compressor && measure(compressor);

const TURN = 2 * Math.PI;

/** Air per work delivered [m³/J, ANR]; of an engine that delivers none, more than any other. */
const airPerWork = ({ airFlowAnr, brakePower }: SettledTurn): number =>
  brakePower > 0 ? airFlowAnr / brakePower : Infinity;

export const measures = {
  /** [rad/s] */
  speed: ofTurn(({ speed }) => speed),
  /** Into the load [W]. */
  power: ofTurn(({ brakePower }) => brakePower),
  /** Mean torque on the load [N m]. */
  torque: ofTurn(({ work }) => work.load / TURN),
  /** [m³/s, ANR] */
  air: ofTurn(({ airFlowAnr }) => airFlowAnr),
  airPerWork: ofTurn(airPerWork),
  leakShare: ofTurn(({ air }) => air.leakShare),
  /** What is taken as a share of what the compressor gives: above one it cannot keep up. */
  compressorDuty: ofCompressor(({ demandAnr, deliveryAnr }) => demandAnr / deliveryAnr),
  /** From a full receiver until it sags [s]; endless where it never does. */
  lasts: ofCompressor(({ minutesUntilSag }) =>
    minutesUntilSag === undefined ? Infinity : minutesUntilSag * 60,
  ),
  startShare: ({ startShare }) => startShare,
  /** [m]; endless where no circle will do. */
  baseCircle: ({ baseCircle }) => baseCircle,
} satisfies Readonly<Record<string, Measure>>;

export type MeasureName = keyof typeof measures;

const measureNames = Object.keys(measures) as readonly MeasureName[];

/** What is not known is left out. */
export type Measured = Readonly<Partial<Record<MeasureName, number>>>;

export function measured(known: Known): Measured {
  const entries = measureNames.flatMap((name) => {
    const value = measures[name](known);
    return value === undefined ? [] : [[name, value] as const];
  });
  return Object.fromEntries(entries);
}
