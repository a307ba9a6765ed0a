/** The slotted disc, seen from the front plate, as it stands at top dead centre. */
import type { Mark, PartDrawing } from '../drawing/drawing.ts';
import { holeSize } from '../drawing/fits.ts';
import { cross, leader, line, turningArrow, words } from '../drawing/marks.ts';
import { deadCentreWords, degrees, inMm, mm } from '../drawing/words.ts';
import { outlineArea, type Outline } from '../geometry/outline.ts';
import { polar } from '../geometry/placing.ts';
import { arcSlot, circle, keyedBore } from '../geometry/shapes.ts';
import type { DiscPlan, PlannedTrack } from './disc-plan.ts';

const ORIGIN = { x: 0, y: 0 };
const UP = Math.PI / 2;

export const slotOutlines = ({ pitchRadius, slotWidth, slotsFrom, length }: PlannedTrack): Outline[] =>
  slotsFrom.map((from) => arcSlot(pitchRadius, slotWidth, from, length));

/** Directions in which words about the tracks leave the disc, to the right and left of the mark. */
const WORDS = { admission: 0.45, exhaust: Math.PI - 0.45 } as const;

function trackMarks(plan: DiscPlan, track: PlannedTrack): Mark[] {
  const rim = plan.disc.disc_diameter / 2;
  const ends = track.slotsFrom.flatMap((from) => [from, from + track.length]);
  return [
    { type: 'circle', layer: 'centre', centre: ORIGIN, radius: track.pitchRadius },
    ...ends.map((direction) =>
      line(
        'centre',
        polar(track.pitchRadius - track.slotWidth, direction),
        polar(track.pitchRadius + track.slotWidth, direction),
      ),
    ),
    ...leader(
      ORIGIN,
      track.pitchRadius,
      WORDS[track.name],
      rim - track.pitchRadius + 8e-3,
      `${track.name} R${mm(track.pitchRadius)}`,
    ),
  ];
}

function slotFacts(plan: DiscPlan): PartDrawing['facts'] {
  return plan.tracks.map((track) => {
    const [first = 0] = track.slotsFrom;
    const [slot] = slotOutlines(track);
    const places = track.slotsFrom.map(
      (from) => `${degrees(turn(from), 2)} to ${degrees(turn(from + track.length), 2)}`,
    );
    return [
      `${track.name}: ${places.length === 1 ? 'slot' : `${places.length} slots`} ${mm(track.slotWidth)} wide`,
      `on R${mm(track.pitchRadius)}, ${degrees(track.length, 2)} between the centres of the round ends, which lie at ${places.join('; ')} anticlockwise from the right; each ${(outlineArea(slot ?? circle(first)) * 1e6).toFixed(1)} mm²`,
    ] as const;
  });
}

const turn = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);

export function discDrawing(plan: DiscPlan, deadCentre: 'TDC' | 'BDC'): PartDrawing {
  const { disc, sense, tracks } = plan;
  const { plates } = disc;
  const rim = disc.disc_diameter / 2;
  const bore = holeSize(disc.shaft_diameter, '7');
  const keyed = plates.key_width > 0;
  return {
    id: 'disc',
    name: 'Slotted disc',
    quantity: 1,
    stock: `brass, bronze or hard plastic plate ${inMm(plates.disc_thickness)}`,
    thickness: plates.disc_thickness,
    edge: circle(rim),
    openings: [
      ...tracks.flatMap(slotOutlines),
      ...(keyed ? [keyedBore(disc.shaft_diameter, plates.key_width, plates.key_depth)] : []),
    ],
    holes: keyed
      ? []
      : [{ centre: ORIGIN, diameter: disc.shaft_diameter, finish: 'ream', purpose: 'shaft, H7' }],
    marks: [
      ...cross(ORIGIN, rim + 3e-3),
      line('engrave', polar(rim - 5e-3, UP), polar(rim - 0.5e-3, UP)),
      words('engrave', { x: 1e-3, y: rim - 4.5e-3 }, deadCentre, 'start', { height: 2e-3 }),
      ...tracks.flatMap((track) => trackMarks(plan, track)),
      ...leader(ORIGIN, rim, -0.9, 8e-3, `Ø${mm(2 * rim)}`),
      ...leader(
        ORIGIN,
        disc.shaft_diameter / 2,
        Math.PI + 0.9,
        rim - disc.shaft_diameter / 2 + 8e-3,
        keyed ? `${bore}, keyway ${mm(plates.key_width)} × ${mm(plates.key_depth)}` : bore,
      ),
      ...turningArrow(ORIGIN, rim + 6e-3, UP + sense * 0.3, -sense * 0.6, 'turns'),
    ],
    notes: [
      `Seen from the front plate, from where the disc turns ${plates.turning}. Engrave the mark on this side.`,
      `With the crank at ${deadCentreWords[deadCentre]} the mark of the disc stands at the mark of the front plate.`,
      ratioNote(disc.slots),
      'Lap both faces flat and parallel on plate glass after cutting; burrs of the cutter close the gap before they wear off.',
    ],
    facts: [
      ...slotFacts(plan),
      [
        'Thickness',
        `${inMm(plates.disc_thickness, 3)}, parallel within a quarter of the face gap of ${(disc.face_gap * 1e6).toFixed(0)} µm`,
      ],
    ],
  };
}

function ratioNote(slots: number): string {
  if (slots === 1)
    return 'The disc turns once with each turn of the crank: chain or gears one to one, with the same number of teeth on both.';
  return `The disc turns once in ${slots} turns of the crank: ${slots} times as many teeth on the disc as on the crank, say ${20 * slots} and 20. A pair of gears turns it against the crank, a chain with it; what counts is that it turns as drawn.`;
}
