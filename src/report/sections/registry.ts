/** The sections of a report from top to bottom. To add one: a file beside this one and a line here. */
import { airSection } from './air.ts';
import { answerSection } from './answer.ts';
import { cautionsSection } from './cautions.ts';
import { startsSection, torqueSection } from './drive.ts';
import { energySection } from './energy.ts';
import { indicatorSection } from './indicator.ts';
import { numbersSection } from './numbers.ts';
import { receiverSection } from './receiver.ts';
import { ringSection } from './ring.ts';
import { sizesSection } from './sizes.ts';
import { startSection } from './start.ts';
import { turnSection } from './turn.ts';
import { workSection } from './work.ts';
import { workshopSection } from './workshop.ts';
import type { Section } from './section.ts';

export const sections: readonly Section[] = [
  answerSection,
  cautionsSection,
  indicatorSection,
  ringSection,
  turnSection,
  airSection,
  energySection,
  workSection,
  startSection,
  startsSection,
  torqueSection,
  receiverSection,
  numbersSection,
  sizesSection,
  workshopSection,
];
