/** Working ends in sentences, for engines that have several. */
import type { EndFacts, EngineFacts } from '../run/result.ts';
import { admissionOpen, exhaustOpen } from './cycle-reading.ts';

/** "the valve chest", "the crank end", but "cylinder 2". */
export const placeText = (name: string): string => (/\d/u.test(name) ? name : `the ${name}`);

export const severalEnds = ({ ends }: EngineFacts): boolean => ends.length > 1;

/** Crank angle as an end counts it, from its own dead centre. */
const ownAngle = ({ deadCentre }: EndFacts, crankAngle: number): number => crankAngle - deadCentre;

export const admissionOpenAt = (end: EndFacts, crankAngle: number): boolean =>
  admissionOpen(end.events, ownAngle(end, crankAngle));

export const exhaustOpenAt = (end: EndFacts, crankAngle: number): boolean =>
  exhaustOpen(end.events, ownAngle(end, crankAngle));
