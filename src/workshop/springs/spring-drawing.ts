/** The spring as a sheet to wind or to order it by, and a chart of the force between cam and follower. */
import type { CamSpools, SpoolName } from '../../parts/valve-gears/cam-spools-parameters.ts';
import type { Mark, PartDrawing } from '../drawing/drawing.ts';
import { dimension, line } from '../drawing/marks.ts';
import { inMm, mm } from '../drawing/words.ts';
import type { CamPlan } from '../cams/cam-plan.ts';
import { floatSpeed } from './follower-force.ts';
import { forceChart } from './force-chart.ts';
import type { ChosenSpring } from './spring-choice.ts';

/** Sections of the wire along both sides, as in a spring cut lengthwise, free: a closed coil at either end. */
function wireMarks({ wire, coilDiameter, activeCoils, freeLength }: ChosenSpring): Mark[] {
  const half = coilDiameter / 2;
  const pitch = (freeLength - 3 * wire) / activeCoils;
  const places = Array.from({ length: Math.round(2 * (activeCoils + 2)) + 1 }, (_, i) => i / 2);
  const along = (turn: number): number => {
    const working = Math.min(activeCoils, Math.max(0, turn - 1));
    return wire / 2 + working * pitch + (turn - working) * wire;
  };
  const section = (turn: number): Mark => ({
    type: 'circle',
    layer: 'outline',
    centre: { x: along(turn), y: Number.isInteger(turn) ? half : -half },
    radius: wire / 2,
  });
  const behind = places.slice(1).map((turn) => {
    const [y0, y1] = Number.isInteger(turn) ? [-half, half] : [half, -half];
    return line('hidden', { x: along(turn - 0.5), y: y0 }, { x: along(turn), y: y1 });
  });
  return [...places.map(section), ...behind];
}

function springMarks(spring: ChosenSpring): Mark[] {
  const outer = (spring.coilDiameter + spring.wire) / 2;
  return [
    ...wireMarks(spring),
    line('centre', { x: -4e-3, y: 0 }, { x: spring.freeLength + 4e-3, y: 0 }),
    ...dimension(
      { x: 0, y: -outer },
      { x: spring.freeLength, y: -outer },
      0,
      -8e-3,
      `free ${mm(spring.freeLength, 1)}`,
    ),
    ...dimension({ x: 0, y: -outer }, { x: 0, y: outer }, Math.PI / 2, 8e-3, `Ø${mm(2 * outer)} outside`),
  ];
}

const rpm = (speed: number): string => `${((speed * 30) / Math.PI).toFixed(0)} rpm`;
const newtons = (force: number): string => `${force.toFixed(1)} N`;
const megapascals = (stress: number): string => `${(stress / 1e6).toFixed(0)} MPa`;

export function springDrawing(
  gear: CamSpools,
  name: SpoolName,
  { shape }: CamPlan,
  spring: ChosenSpring,
): PartDrawing {
  const { loading, wire, coilDiameter, activeCoils } = spring;
  const { top_speed: top } = gear.springs;
  const floats = floatSpeed(shape.cam, loading);
  const full = loading.preload + loading.rate * (shape.cam.lift - shape.cam.lash);
  return {
    id: `${name}-spring`,
    name: `Spring of the ${name} spool`,
    quantity: 1,
    stock: `patented spring steel wire Ø${mm(wire)} mm, ends closed and ground`,
    openings: [],
    holes: [],
    marks: springMarks(spring),
    notes: [
      'The sections of the wire show the number of coils, not the hand of the winding; either will do.',
      'Wear eye protection when winding, cutting or fitting a spring: it strikes without warning.',
    ],
    facts: [
      [
        'Wire, mean diameter of the coils',
        `Ø${inMm(wire)}, Ø${inMm(coilDiameter)} (winding ratio ${(coilDiameter / wire).toFixed(1)})`,
      ],
      ['Coils', `${activeCoils} working, ${activeCoils + 2} in all`],
      ['Rate', `${(loading.rate / 1e3).toFixed(2)} N/mm`],
      [
        'Length free, fitted, solid',
        `${inMm(spring.freeLength, 1)}, ${inMm(spring.fittedLength, 1)}, ${inMm(spring.solidLength, 1)}`,
      ],
      ['Force with the valve shut, at full lift', `${newtons(loading.preload)}, ${newtons(full)}`],
      [
        'Stress at the end of its travel',
        `${megapascals(spring.largestStress)} of ${megapascals(spring.allowedStress)} allowed`,
      ],
      ['Mass that moves', `${(loading.mass * 1e3).toFixed(0)} g`],
      [
        'The follower floats from',
        `${rpm(floats)}, ${(floats / top).toFixed(2)} times the top speed of ${rpm(top)}`,
      ],
    ],
    charts: [
      {
        title: `Force between cam and follower over a turn, at rest and at ${rpm(top)}`,
        svg: forceChart(shape, loading, top),
      },
    ],
  };
}
