/** The sheet to set the finished valve gear by: dead centre, events, order of adjustment, degree wheel. */
import { pistonPlace, type SettingEvent } from './events.ts';
import { list, numberTable, partSheets, type Sheet } from '../files/page.ts';
import { allMarks, cutPaths } from '../drawing/kerf.ts';
import { degrees, mm } from '../drawing/words.ts';
import type { CrankTrain } from '../../parts/crank-train.ts';
import { degreeWheel } from './degree-wheel.ts';

export interface Setting {
  readonly title: string;
  readonly crank: CrankTrain;
  readonly ends: readonly { readonly name: string; readonly events: readonly SettingEvent[] }[];
  readonly adjustment: readonly string[];
}

/** Well before the dead centre, where the piston moves fast enough to feel the stop sharply: some 30°. */
const STOP_ANGLE = Math.PI / 6;

function deadCentreSteps(crank: CrankTrain): string[] {
  const { travel, perDegree } = pistonPlace(crank, STOP_ANGLE);
  return [
    'Vent the engine and disconnect the air. Nothing below is done with pressure in the pipe.',
    'Fix the wheel to the crankshaft and a wire pointer to the bed. Set the pointer near 0 with the piston by eye at top dead centre.',
    `Stop the piston about ${mm(travel, 1)} mm short of the top, with a bar across the cylinder's mouth or a screw through the cover. There it moves ${mm(perDegree)} mm in a degree; at the dead centre itself it hardly moves at all, and no eye can find it.`,
    'Turn gently forwards up to the stop and read the wheel; then backwards up to the stop and read again. Half-way between the two readings is the dead centre: about 30° and 330° if the pointer was right.',
    'Bend the pointer by half of what is missing, until both readings are equally far from 0. Take the stop out again.',
    'From here on always turn forwards up to a reading, so that play in pins and gears lies on one side.',
  ];
}

function eventTable(crank: CrankTrain, events: readonly SettingEvent[]): string {
  return numberTable({
    head: ['event', 'mark', 'crank angle', 'piston below top dead centre', 'on the', 'a degree there is'],
    rows: events.map(({ name, short, angle }) => {
      const { travel, stroke, perDegree } = pistonPlace(crank, angle);
      return [name, short, degrees(angle), `${mm(travel)} mm`, `${stroke} stroke`, `${mm(perDegree)} mm`];
    }),
  });
}

export const cautions: readonly string[] = [
  'Compressed air starts an engine without warning. Shut the valve at the receiver, vent the hose and leave the plug out before a finger goes near a cam, a disc or a crank. Never look for the moment of opening with more than 0.2 bar, and then hold the flywheel.',
  'Cams, discs, keys and set screws wind in hair, sleeves and gloves. Guard them before the engine runs; no loose wheel, no drill chuck key, no degree wheel of card above a slow turn by hand.',
  'Springs strike when they slip: eye protection, and press them together in a clamp, not between fingers.',
  'A jet, a torch or a saw leaves edges that cut and scale that flies; clamp small parts, deburr, wear eye protection and what the cutter asks for. Plated or painted sheet gives poisonous fumes.',
  'These drawings come from a calculation. Local codes for pressure and for guards come first; ask a licensed person where they apply.',
];

const cautionBox = `<div class="caution"><h2>Mind</h2>${list(cautions)}</div>`;

export function settingSheets({ title, crank, ends, adjustment }: Setting): Sheet[] {
  const [first] = ends;
  const wheel = degreeWheel(first?.events ?? []);
  const tables = ends.map(
    ({ name, events }) =>
      `<h2>Events${ends.length > 1 ? ` of the ${name} end` : ''}</h2>${eventTable(crank, events)}`,
  );
  return [
    {
      id: 'setting',
      heading: `Setting the valve gear: ${title}`,
      body: [
        cautionBox,
        ...tables,
        '<h2>Top dead centre</h2>',
        list(deadCentreSteps(crank), 'ol'),
        '<h2>Order of adjustment</h2>',
        list(adjustment, 'ol'),
      ].join('\n'),
    },
    ...partSheets(wheel, allMarks(wheel, cutPaths(wheel, 0).marks)),
  ];
}
