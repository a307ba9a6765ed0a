/** Front plate, back plate and spacers of a disc valve, seen from the front. */
import { cos } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import type { Hole, Mark, PartDrawing } from '../drawing/drawing.ts';
import { cross, leader, line, words } from '../drawing/marks.ts';
import { degrees, inMm, mm } from '../drawing/words.ts';
import { polar } from '../geometry/placing.ts';
import { arcSlot, circle } from '../geometry/shapes.ts';
import { slotOutlines } from './disc-drawing.ts';
import type { DiscPlan } from './disc-plan.ts';

const ORIGIN = { x: 0, y: 0 };
const UP = Math.PI / 2;

/** Holes that both plates share. */
function sharedHoles({ disc, tracks, bolts, dowels, boltCircle, boltHole }: DiscPlan): Hole[] {
  const { plates } = disc;
  return [
    { centre: ORIGIN, diameter: disc.shaft_diameter, finish: 'ream', purpose: 'shaft, H8 or a bush' },
    ...tracks.map(({ name, pitchRadius, holeAt, holeDiameter }): Hole => ({
      centre: polar(pitchRadius, holeAt),
      diameter: holeDiameter,
      finish: 'cut',
      purpose: `${name} port`,
    })),
    ...bolts.map((direction): Hole => ({
      centre: polar(boltCircle, direction),
      diameter: boltHole,
      finish: 'cut',
      purpose: `M${mm(plates.bolt_diameter)} bolt`,
    })),
    ...dowels.map((direction): Hole => ({
      centre: polar(boltCircle, direction),
      diameter: plates.dowel_diameter,
      finish: 'ream',
      purpose: 'dowel, both plates together',
    })),
  ];
}

function plateMarks(plan: DiscPlan, radius: number): Mark[] {
  const { disc, tracks, bolts, boltCircle, boltHole } = plan;
  const [firstBolt = 0] = bolts.filter((direction) => cos(direction) > 0);
  return [
    ...cross(ORIGIN, radius + 3e-3),
    { type: 'circle', layer: 'centre', centre: ORIGIN, radius: boltCircle },
    { type: 'circle', layer: 'reference', centre: ORIGIN, radius: disc.disc_diameter / 2 },
    ...tracks.flatMap((track) => {
      const at = polar(track.pitchRadius, track.holeAt);
      const right = track.name === 'admission';
      const direction = right ? 0.75 : Math.PI + 0.75;
      return [
        ...cross(at, track.holeDiameter / 2 + 2e-3),
        ...leader(
          at,
          track.holeDiameter / 2,
          direction,
          radius * 0.55,
          `${track.name} Ø${mm(track.holeDiameter)} on R${mm(track.pitchRadius)}`,
        ),
      ];
    }),
    ...leader(
      polar(boltCircle, firstBolt),
      boltHole / 2,
      firstBolt,
      radius - boltCircle + 8e-3,
      `${bolts.length} × Ø${mm(boltHole)} on Ø${mm(2 * boltCircle)}`,
    ),
    ...leader(ORIGIN, radius, -0.35, 8e-3, `Ø${mm(2 * radius)}`),
    ...tracks
      .flatMap(slotOutlines)
      .map((outline): Mark => ({ type: 'outline', layer: 'reference', outline })),
  ];
}

const sharedFacts = ({ tracks, boltCircle, bolts }: DiscPlan): PartDrawing['facts'] => [
  ...tracks.map(
    ({ name, pitchRadius, holeAt, holeDiameter }) =>
      [
        `${name} hole`,
        `Ø${inMm(holeDiameter)} at ${degrees(holeAt)} on R${mm(pitchRadius)}, ${((Math.PI / 4) * square(holeDiameter) * 1e6).toFixed(1)} mm²`,
      ] as const,
  ),
  ['Bolt circle', `${bolts.length} on Ø${inMm(2 * boltCircle)}`],
];

const SHARED_NOTES: readonly string[] = [
  'Seen from the front. The slots of the disc at top dead centre are shown in thin dashes.',
  'Clamp both plates together for ports, bolts and dowels, and mark which faces lie inside.',
  'Lap the inside face flat on plate glass after every hole is drilled.',
];

export function frontPlate(plan: DiscPlan, deadCentre: 'TDC' | 'BDC'): PartDrawing {
  const { plates } = plan.disc;
  return {
    id: 'front-plate',
    name: 'Front plate: chest and exhaust pipe',
    quantity: 1,
    stock: `cast iron, brass or aluminium plate ${inMm(plates.plate_thickness)}`,
    thickness: plates.plate_thickness,
    edge: circle(plan.plateRadius),
    openings: [],
    holes: sharedHoles(plan),
    marks: [
      ...plateMarks(plan, plan.plateRadius),
      line('engrave', polar(plan.plateRadius - 6e-3, UP), polar(plan.plateRadius - 0.5e-3, UP)),
      words('engrave', { x: 1e-3, y: plan.plateRadius - 5e-3 }, deadCentre, 'start', { height: 2e-3 }),
    ],
    notes: [
      ...SHARED_NOTES,
      'Threads for the pipes go in from the front; leave at least 2 mm of the plain hole at the inside face.',
    ],
    facts: sharedFacts(plan),
  };
}

/** Degrees of the stack beside the uppermost timing slot, so that a shift can be read. */
function timingScale({ disc, backRadius }: DiscPlan): Mark[] {
  const half = Math.floor((disc.plates.adjustment * 90) / Math.PI + 1e-9);
  return Array.from({ length: 2 * half + 1 }, (_, i) => {
    const degree = i - half;
    const direction = UP + (degree * Math.PI) / 180;
    const length = degree % 5 === 0 ? 2.5e-3 : 1.5e-3;
    return line(
      'engrave',
      polar(backRadius - 0.3e-3 - length, direction),
      polar(backRadius - 0.3e-3, direction),
    );
  });
}

export function backPlate(plan: DiscPlan): PartDrawing {
  const { disc, timingCircle, timingSlots, boltHole, backRadius } = plan;
  const { plates } = disc;
  const half = plates.adjustment / 2;
  return {
    id: 'back-plate',
    name: 'Back plate: cylinder, with timing slots',
    quantity: 1,
    stock: `cast iron, brass or aluminium plate ${inMm(plates.plate_thickness)}`,
    thickness: plates.plate_thickness,
    edge: circle(backRadius),
    openings: timingSlots.map((middle) => arcSlot(timingCircle, boltHole, middle - half, plates.adjustment)),
    holes: sharedHoles(plan),
    marks: [
      ...plateMarks(plan, backRadius),
      { type: 'circle', layer: 'centre', centre: ORIGIN, radius: timingCircle },
      ...timingScale(plan),
      ...leader(
        ORIGIN,
        timingCircle,
        Math.PI - 0.4,
        backRadius - timingCircle + 8e-3,
        `3 slots ${mm(boltHole)} wide, ${degrees(plates.adjustment)} long, on Ø${mm(2 * timingCircle)}`,
      ),
    ],
    notes: [
      ...SHARED_NOTES,
      `The timing slots carry the whole stack on the engine. Turned ${plates.turning === 'clockwise' ? 'anticlockwise' : 'clockwise'} as drawn, every event comes earlier; one degree of the plate is ${disc.slots === 1 ? 'one degree' : `${disc.slots} degrees`} of the crank.`,
      ...(disc.body_advance === 0
        ? []
        : [
            `Set it ${degrees(disc.body_advance)} from the middle that way: the \`body_advance\` of the scenario.`,
          ]),
      'The passage to the cylinder leaves by a hose, or by a hole long enough for the turning.',
    ],
    facts: [
      ...sharedFacts(plan),
      [
        'Range of the timing slots',
        `${degrees(plates.adjustment)} of the plate, ${degrees(disc.slots * plates.adjustment)} of the crank`,
      ],
    ],
  };
}

export function spacer(plan: DiscPlan): PartDrawing {
  const { disc, spacerThickness, spacerRadius, boltHole } = plan;
  return {
    id: 'spacer',
    name: 'Spacer',
    quantity: plan.bolts.length,
    stock: `turned, ${inMm(spacerThickness, 3)} long, all lapped to one length together`,
    edge: circle(spacerRadius),
    openings: [],
    holes: [
      {
        centre: ORIGIN,
        diameter: boltHole,
        finish: 'drill',
        purpose: `M${mm(disc.plates.bolt_diameter)} bolt`,
      },
    ],
    marks: [
      ...cross(ORIGIN, spacerRadius + 2e-3),
      ...leader(ORIGIN, spacerRadius, 0.6, 6e-3, `Ø${mm(2 * spacerRadius)}`),
      ...leader(ORIGIN, boltHole / 2, -0.6, spacerRadius + 4e-3, `Ø${mm(boltHole)}`),
    ],
    notes: [
      'The spacers make the face gap: the disc and twice the gap. Make the disc first, measure it, and add the gap to what you measured.',
      'The rim of the disc stays open to the room between them.',
    ],
    facts: [
      [
        'Length',
        `${inMm(spacerThickness, 3)} = disc ${inMm(disc.plates.disc_thickness, 3)} + 2 × ${(disc.face_gap * 1e6).toFixed(0)} µm`,
      ],
      ['All alike within', `${Math.max(1, Math.round((disc.face_gap * 1e6) / 5))} µm`],
    ],
  };
}
