/** A line chart as data: what the page's script draws. Plain values only, as it travels through JSON. */

export interface ChartLine {
  readonly label: string;
  /** Which ink and which dash pattern, 0 to 5; see `inks.ts`. */
  readonly ink: number;
  /** Separate points instead of a line, for what was read off an instrument. */
  readonly points?: boolean;
  readonly values: readonly (number | null)[];
}

/** A thin upright line, such as a valve event. */
export interface ChartMark {
  readonly at: number;
  readonly label?: string;
}

export interface Chart {
  readonly id: string;
  /** Charts of one group have the same x values and share the cursor. */
  readonly group: string;
  readonly x: {
    readonly label: string;
    readonly values: readonly number[];
    /** Distances between labels to choose from. */
    readonly steps?: readonly number[];
  };
  readonly y: { readonly label: string };
  readonly lines: readonly ChartLine[];
  readonly marks: readonly ChartMark[];
}

/** Five significant digits: more than a screen can show. */
export function chartValues(
  values: ArrayLike<number>,
  convert: (value: number) => number,
): (number | null)[] {
  return Array.from(values, (value) => {
    const converted = convert(value);
    return Number.isFinite(converted) ? chartNumber(converted) : null;
  });
}

export const chartNumber = (value: number): number => Number(value.toPrecision(5)) + 0;
