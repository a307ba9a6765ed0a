/** Looking longer at an engine whose time was over before it had settled; nothing about it is changed. */
import { rampText } from '../variations/variation.ts';
import { writtenAt, type RemedyRule } from './remedy.ts';

const TIMES = [3, 10];

/** The longest there is [s]. */
const LONGEST = 3600;

const PATH = 'run.longest_time';

export const longerLook: RemedyRule = (engine, { outcome }) => {
  const { longest_time: longest } = engine.spec.run;
  if (outcome.kind !== 'not-settled' || outcome.time < longest) return undefined;
  const now = writtenAt(engine, PATH) ?? rampText(longest, 's');
  const longer = TIMES.map((times) => Math.min(LONGEST, times * longest)).filter((time) => time > longest);
  return {
    what: 'a longer look',
    rungs: [...new Set(longer)].map((time) => [{ path: PATH, now, then: rampText(time, 's') }]),
  };
};
