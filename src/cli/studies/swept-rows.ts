/** The rows of a sweep read back from its file of JSON lines, line by line, for words and pictures. */
import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import { sweepTally, sweptEngine, type SweepTally, type SweptEngine } from '../../index.ts';

/** More than this is no picture but a blur. */
const MOST_SHOWN = 4000;

export interface SweptRows {
  readonly tally: SweepTally;
  /** Empty when there are too many. */
  readonly engines: readonly SweptEngine[];
}

export async function sweptRows(path: string, count: number): Promise<SweptRows> {
  const { add, tally } = sweepTally();
  const engines: SweptEngine[] = [];
  for await (const line of createInterface({ input: createReadStream(path), crlfDelay: Infinity })) {
    const own = sweptEngine(line);
    add(own);
    if (count <= MOST_SHOWN) engines.push(own);
  }
  return { tally: tally(), engines };
}
