/** What a bench test found: values with their 95 % intervals, pictures as data, and plain sentences. SI throughout. */
import type { Dimension } from '../kinds/parameter.ts';

/** A value that was found. */
export interface Estimate {
  readonly name: string;
  readonly value: number;
  /** Ends of the 95 % interval. */
  readonly low: number;
  readonly high: number;
  /** `number` for a pure number, or one in the unit of the suffix. */
  readonly dimension: Dimension | 'number';
  /** Behind the number and its unit: "ANR". */
  readonly suffix?: string;
}

/** A line or, for what was read, points over the x values of its picture. */
export interface PictureLine {
  readonly label: string;
  readonly values: readonly number[];
  readonly points?: boolean;
}

/** A picture as data. */
export interface Picture {
  readonly id: string;
  /** A sentence that says what to see. */
  readonly title: string;
  /** Values as they are drawn, in the unit of the label. */
  readonly x: {
    readonly label: string;
    readonly values: readonly number[];
    /** They are counted, not measured. */
    readonly whole?: boolean;
  };
  readonly y: { readonly label: string };
  readonly lines: readonly PictureLine[];
}

/** Rows of words and figures. */
export interface FindingTable {
  readonly caption: string;
  readonly head: readonly string[];
  /** The first cell of a row is its heading. */
  readonly rows: readonly (readonly string[])[];
}

/** What can hurt in the next test. */
export interface BenchCaution {
  readonly topic: string;
  readonly text: string;
  readonly severity: 'note' | 'caution' | 'danger';
}

/** All that a test, a notebook or a search for causes comes to. */
export interface Finding {
  /** False when the readings do not bear a figure; the headline then says why. */
  readonly usable: boolean;
  readonly headline: string;
  readonly estimates: readonly Estimate[];
  readonly statements: readonly string[];
  /** What may be wrong with the readings or with what is made of them. */
  readonly warnings: readonly string[];
  readonly tables?: readonly FindingTable[];
  readonly pictures: readonly Picture[];
  /** Lines for the scenario file; empty when there are none to write. */
  readonly scenario: string;
  readonly next: string;
  readonly cautions: readonly BenchCaution[];
}
