/**
 * The drag of a valve gear as numbers for the C reference, found by asking the gear. All shipped gears drag by
 *
 *   τ = L(θ) G + [L(θ) (F + h (p_c − p₀) + k (p_c − p̄)) + U(θ) (p_c − p) + W(θ) (p_c − p_e)] + B(θ) ω
 *
 * with the bracket never below zero, or its magnitude: p_c in the chest, p in the cylinder, p_e in its other end, p₀ in the
 * room, p̄ the mean under a film between chest and room. Whatever drags otherwise is refused.
 */
import { meanFilmPressure } from '../../src/parts/valve-gears/face-push.ts';
import type { ValveGear } from '../../src/parts/valve-gears/valve-gear.ts';
import { angleTable } from './angle-table.ts';

/** A pressure so little above that of the room that the bracket keeps its sign, and ones far above it [Pa]. */
const LITTLE = 1e3;
const MUCH = 5e5;
const TOO_MUCH = 1e8;

const SPEED = 30;
const ANGLES = Array.from({ length: 720 }, (_, i) => (i / 720) * 2 * Math.PI + 1e-3);

type AngleLaw = (angle: number) => number;

/** Chest, cylinder and other end, above the room. */
type Above = readonly [chest: number, cylinder: number, otherEnd: number];

/** A table, unless the law is a multiple of another; that multiple then stands before it. */
function multipleOrTable(law: AngleLaw, lever: AngleLaw, at: number, kinks: readonly number[]): string {
  const factor = law(at) / lever(at);
  const largest = Math.max(...ANGLES.map((angle) => Math.abs(law(angle))));
  const multiple = ANGLES.every((angle) => Math.abs(law(angle) - factor * lever(angle)) <= 1e-8 * largest);
  return multiple ? `${factor} 0 0` : `0 ${angleTable(law, kinks)}`;
}

export function dragNumbers(gear: ValveGear, room: number, kinks: readonly number[]): string {
  const drag = (angle: number, [chest, cylinder, otherEnd]: Above, speed = 0): number =>
    gear.dragTorque(angle, speed, {
      chest: room + chest,
      cylinder: room + cylinder,
      otherEnd: room + otherEnd,
    });
  const atRoom: AngleLaw = (angle) => drag(angle, [0, 0, 0]);
  const underAir: AngleLaw = (angle) => drag(angle, [LITTLE, 0, 0]);
  const reference = ANGLES.some((angle) => atRoom(angle) > 0) ? atRoom : underAir;
  const at = ANGLES.reduce((best, angle) => (reference(angle) > reference(best) ? angle : best));
  const lever: AngleLaw = reference(at) === 0 ? () => 0 : (angle) => reference(angle) / reference(at);
  const perCylinder: AngleLaw = (angle) =>
    (underAir(angle) - drag(angle, [LITTLE, LITTLE / 10, 0])) / (LITTLE / 10);
  const perOtherEnd: AngleLaw = (angle) =>
    (underAir(angle) - drag(angle, [LITTLE, 0, LITTLE / 10])) / (LITTLE / 10);
  const lifted = drag(at, [0, TOO_MUCH, 0]);
  const magnitude = lifted > atRoom(at);
  const always = magnitude ? atRoom(at) : lifted;
  const spring = atRoom(at) - always;
  const underFilm = (chest: number): number => room + chest - meanFilmPressure(room + chest, room);
  const risen = (chest: number): number => drag(at, [chest, 0, 0]) - always - spring;
  // Two equations for what goes with the chest straight and by the film; a gear lifted off shows neither.
  const [little, much] = [risen(LITTLE) / LITTLE, risen(MUCH) / MUCH];
  const bends = Math.abs(much / little - 1) > 1e-6 && risen(MUCH) > -spring * (1 - 1e-9);
  const film = bends ? (much - little) / (underFilm(MUCH) / MUCH - underFilm(LITTLE) / LITTLE) : 0;
  const chest = little - (film * underFilm(LITTLE)) / LITTLE - perCylinder(at) - perOtherEnd(at);
  const perSpeed: AngleLaw = (angle) => (drag(angle, [0, 0, 0], SPEED) - atRoom(angle)) / SPEED;
  return [
    `${magnitude ? 1 : 0} ${always} ${spring} ${chest} ${film}`,
    angleTable(lever, kinks),
    multipleOrTable(perCylinder, lever, at, kinks),
    multipleOrTable(perOtherEnd, lever, at, kinks),
    angleTable(perSpeed, kinks),
  ].join('\n');
}
