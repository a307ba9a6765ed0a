/** A study as its file describes it: which engine, what varies, and what is asked of the many. */
import { choice, count, optionalGroup, part, partList, settings, text } from '../kinds/describe.ts';
import type { Complaint } from '../kinds/kind.ts';
import type { Values } from '../kinds/parameter.ts';
import { aims } from './aims/registry.ts';
import { conditions } from './conditions/registry.ts';
import { samples } from './samples/registry.ts';
import { tolerances } from './tolerances/registry.ts';
import { pathParameters } from './variations/path-parameters.ts';
import { rampComplaints } from './variations/ramp.ts';
import { variations } from './variations/registry.ts';

/** Every key of a study file. */
export const studyParameters = {
  title: text(120, 'What the study asks.'),
  notes: text(4000, 'Anything worth remembering about it.', ''),
  engine: text(300, 'Scenario file of the engine; the path counts from this file.'),
  set: settings({
    most: 50,
    needed: false,
    doc: 'Values that all engines of the study have instead of those in the scenario, by their paths.',
    example: ['supply.pressure', '2.5 bar gauge'],
  }),
  vary: partList(variations, 16, 'What differs from one engine to the next.'),
  sample: part(samples, 'Which engines there are.', 'grid'),
  conditions: partList(conditions, 8, 'What an engine has to do; without any, to run.'),
  best: optionalGroup('Asks for the best engine within the ranges that vary.', {
    aim: part(aims, 'What it is to be best at.'),
    most_engines: count({ min: 10, max: 100_000, default: 200 }, 'How many engines may be tried.'),
  }),
  limit: optionalGroup('Asks how far one value may go while all conditions hold.', {
    ...pathParameters,
    from: text(80, 'One end of where to look, with its unit.'),
    to: text(80, 'The other end, in the same unit.'),
    wanted: choice(
      ['largest', 'smallest'],
      'Whether the largest or the smallest value is asked for.',
      'largest',
    ),
  }),
  odds: optionalGroup('Asks how likely an engine made within tolerances meets the conditions.', {
    engines: count({ min: 10, max: 1_000_000, default: 400 }, 'How many engines to build on paper.'),
    seed: count({ min: 0, max: 2_147_483_647, default: 1 }, 'Another number gives other engines.'),
    tolerances: partList(tolerances, 16, 'How sizes stray.'),
  }),
};

export type StudySpec = Values<typeof studyParameters>;

const under = (key: string, complaints: readonly Complaint[]): Complaint[] =>
  complaints.map((complaint) => ({ ...complaint, path: [key, ...complaint.path] }));

/** Everything about a study that cannot be, although each value by itself could; the engine aside. */
export function studyComplaints(spec: StudySpec): readonly Complaint[] {
  const ofEach = [
    ...spec.vary.flatMap((own, i) => under('vary', under(String(i), own.complaints(null)))),
    ...(spec.limit ? under('limit', rampComplaints(spec.limit)) : []),
    ...(spec.odds?.tolerances ?? []).flatMap((own, i) =>
      under('odds', under('tolerances', under(String(i), own.complaints(null)))),
    ),
  ];
  if (ofEach.length > 0) return ofEach;
  const varied = spec.vary.map((own) => own.build(null));
  return under('sample', spec.sample.complaints(varied));
}
