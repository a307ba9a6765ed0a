/**
 * Rotary disc valve: a disc with arc slots turns with the crank, or n times slower, between a front plate (chest and
 * exhaust pipe) and a back plate (cylinder). Admission and exhaust each have their own n slots, pitch circle and pair of
 * holes.
 *
 * Leaks across the two face gaps of height h, as plane films:
 *   front: from the chest hole to rim and shaft                    chest → room
 *   back:  from both cylinder holes to rim and shaft               cylinder → room
 *   through: hole → gap → slot → gap → hole while shut; the land shortens as the slot comes near
 * Drag: film shear τ = π μ ω_d (R_o⁴ − R_i⁴)/(2h) per face (Newton's law of viscosity) at the disc's speed ω_d = ω/n; at
 * the crankshaft, power for power, τ/n. Plus the preload's friction, and that of the disc on the plate to which the air
 * pushes it: from the front the chest hole, from the back both cylinder holes, each on the area of face-push.ts and at its
 * pitch radius, τ = μ |Σ ± (p − p_room) A R|/n.
 * In reverse the gear is left as it is, but for plates that are turned over to a second stop.
 */
import { kindOf } from '../../kinds/kind.ts';
import { filmResistance, separateCirclesShapeFactor } from '../../gas/gap.ts';
import { log } from '../../numerics/elementary/logarithm.ts';
import { sin } from '../../numerics/elementary/trigonometric.ts';
import { square } from '../../numerics/elementary/whole-powers.ts';
import { forwardAngle } from '../crank-positions.ts';
import type { PartContext } from '../part-context.ts';
import { gap, port, type Passage } from '../passage.ts';
import {
  centreDistance,
  shutBreakpoints,
  slotLength,
  trackArea,
  trackBreakpoints,
  whileShut,
  type DiscTrack,
} from './disc-track.ts';
import { pushArea } from './face-push.ts';
import { mirrored } from './mirrored.ts';
import { rotaryDiscComplaints } from './rotary-disc-complaints.ts';
import { discTrack, rotaryDiscParameters, type RotaryDisc } from './rotary-disc-parameters.ts';
import { orderedEdges, type ValveGear } from './valve-gear.ts';

/**
 * S from a hole to rim and shaft together. The logarithm maps the face to a strip W = ln(R_o/R_s) wide with the hole, of
 * radius ρ = a/R, at u = ln(R/R_s) from its edge: S = 2π / ln((2W/πρ) sin(πu/W)). Derived; within 2 % of a field
 * solution. The slots, which lie elsewhere while the port is shut, are left out.
 */
function faceShapeFactor(
  disc: Pick<RotaryDisc, 'disc_diameter' | 'shaft_diameter'>,
  track: DiscTrack,
): number {
  const width = log(disc.disc_diameter / disc.shaft_diameter);
  const place = log((2 * track.pitchRadius) / disc.shaft_diameter);
  const radius = track.holeDiameter / 2 / track.pitchRadius;
  return (2 * Math.PI) / log(((2 * width) / (Math.PI * radius)) * sin((Math.PI * place) / width));
}

function faceLeaks(
  disc: RotaryDisc,
  admission: DiscTrack,
  exhaust: DiscTrack,
  context: PartContext,
): Passage[] {
  const h = disc.face_gap;
  const front = faceShapeFactor(disc, admission);
  const back = front + faceShapeFactor(disc, exhaust);
  const mouth = Math.PI * h;
  return [
    gap(
      context.gas,
      { name: 'across the front face', from: 'chest', to: 'atmosphere' },
      filmResistance(front, h),
      mouth * admission.holeDiameter,
    ),
    gap(
      context.gas,
      { name: 'across the back face', from: 'cylinder', to: 'atmosphere' },
      filmResistance(back, h),
      mouth * (admission.holeDiameter + exhaust.holeDiameter),
    ),
  ];
}

/** Hole → gap → slot → gap → hole: two equal films, one at each face, past the slot ends on either side. */
function throughLeak(
  disc: RotaryDisc,
  track: DiscTrack,
  context: PartContext,
  ends: Pick<Passage, 'name' | 'from' | 'to'>,
) {
  const h = disc.face_gap;
  const [hole, end] = [track.holeDiameter / 2, track.slotWidth / 2];
  const shapeFactor = (angleToEnd: number): number =>
    separateCirclesShapeFactor(hole, end, centreDistance(track, angleToEnd, h));
  const resistance = whileShut(
    track,
    h,
    (sinceClosing, untilOpening) =>
      2 * filmResistance(shapeFactor(sinceClosing) + shapeFactor(untilOpening), h),
  );
  const section = Math.PI * h * Math.min(track.holeDiameter, track.slotWidth);
  return gap(context.gas, ends, resistance, section);
}

/** Crank angles [0, 2π) at which opening or land of a track start, end or kink. */
function trackEdges(track: DiscTrack, faceGap: number): number[] {
  return orderedEdges([
    ...trackBreakpoints(track).map((angle) => track.opens + track.slots * angle),
    ...shutBreakpoints(track, faceGap).flatMap((angle) => [
      track.closes + track.slots * angle,
      track.opens - track.slots * angle,
    ]),
  ]);
}

/** Torque at the crankshaft that shears the films of both faces, per crank speed [N m s]. */
function filmDrag(disc: RotaryDisc): number {
  const rim = disc.disc_diameter / 2;
  const shaft = disc.shaft_diameter / 2;
  const ofDisc =
    (2 * Math.PI * disc.film_viscosity * (square(square(rim)) - square(square(shaft)))) / (2 * disc.face_gap);
  return ofDisc / square(disc.slots);
}

/** Friction torque at the crankshaft [N m] of a disc that the air pushes against one of the plates. */
function pushDrag(
  disc: RotaryDisc,
  admission: DiscTrack,
  exhaust: DiscTrack,
  { atmosphericPressure: room }: PartContext,
): ValveGear['dragTorque'] {
  const { disc_diameter, shaft_diameter, friction_coefficient, slots } = disc;
  const moment = ({ pitchRadius, holeDiameter }: DiscTrack): number => {
    const reach = Math.min(disc_diameter / 2 - pitchRadius, pitchRadius - shaft_diameter / 2);
    return (friction_coefficient * pitchRadius * pushArea(holeDiameter / 2, reach)) / slots;
  };
  const front = moment(admission);
  const back = front + moment(exhaust);
  return (_angle, _speed, { chest, cylinder }) => Math.abs((chest - room) * front - (cylinder - room) * back);
}

function build(disc: RotaryDisc, context: PartContext): ValveGear {
  const admission = discTrack(disc, 'admission', context);
  const exhaust = discTrack(disc, 'exhaust', context);
  const cd = disc.discharge_coefficient;
  const { gas } = context;
  const film = filmDrag(disc);
  const push = pushDrag(disc, admission, exhaust, context);
  const { body_advance, reverse_turn } = disc;
  return {
    ports: [
      port(
        gas,
        'admission',
        { name: 'admission slot', from: 'chest', to: 'cylinder' },
        trackArea(admission, cd),
      ),
      port(
        gas,
        'exhaust',
        { name: 'exhaust slot', from: 'cylinder', to: 'atmosphere' },
        trackArea(exhaust, cd),
      ),
    ],
    sealingGaps: [
      ...faceLeaks(disc, admission, exhaust, context),
      throughLeak(disc, admission, context, {
        name: 'past the shut admission slot',
        from: 'chest',
        to: 'cylinder',
      }),
      throughLeak(disc, exhaust, context, {
        name: 'past the shut exhaust slot',
        from: 'cylinder',
        to: 'atmosphere',
      }),
    ],
    edges: orderedEdges([admission, exhaust].flatMap((track) => trackEdges(track, disc.face_gap))),
    events: {
      admission: forwardAngle(0, admission.opens),
      cutOff: forwardAngle(0, admission.closes),
      release: forwardAngle(0, exhaust.opens),
      compression: forwardAngle(0, exhaust.closes),
    },
    derivedSizes: [
      {
        label: 'admission slot, between the centres of its round ends',
        value: slotLength(admission),
        dimension: 'angle',
      },
      {
        label: 'exhaust slot, between the centres of its round ends',
        value: slotLength(exhaust),
        dimension: 'angle',
      },
    ],
    dragTorque: (angle, speed, pressures) =>
      disc.preload_torque + film * speed + push(angle, speed, pressures),
    ...(reverse_turn === undefined
      ? {}
      : {
          reverse: {
            gear: () => mirrored(build({ ...disc, body_advance: body_advance + reverse_turn }, context)),
            serves: true,
          },
        }),
  };
}

export const rotaryDisc = kindOf({
  kind: 'rotary disc',
  doc: 'A slotted disc turned by the crank between two drilled plates, one to one or geared down.',
  parameters: rotaryDiscParameters,
  firstEngine: { values: { 'valve_gear.exhaust.pitch_radius': '14 mm' } },
  complaints: rotaryDiscComplaints,
  build,
});
