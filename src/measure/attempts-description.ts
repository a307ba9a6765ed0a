/** The notebook of one engine: attempt after attempt. */
import { partList, pureNumber, settings, text } from '../kinds/describe.ts';
import { attemptKinds } from './attempts/registry.ts';
import { roomParameters } from './sheet-description.ts';

/** Every key of a notebook of attempts. */
export const attemptsParameters = {
  title: text(120, 'Which engine the attempts are about.'),
  notes: text(4000, 'Anything worth remembering.', ''),
  atmosphere: roomParameters.atmosphere,
  engine: text(200, 'Scenario file of the engine as drawn, in the folder of this file or below it.'),
  unknowns: settings({
    most: 5,
    needed: true,
    example: ['leaks.0.clearance', '12 um'],
    doc: 'What the attempts are to teach: values of the scenario by their paths, each with a first guess.',
  }),
  guessed_within: pureNumber(
    { min: 1.05, max: 20, default: 2 },
    '2',
    'Factor by which a first guess may be out, up or down.',
  ),
  attempts: partList(attemptKinds, 60, 'What was tried, in order.'),
};
