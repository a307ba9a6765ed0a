/** Force between cam and follower against the crank angle, as a small SVG in black: creeping, and at the top speed. */
import { log10 } from '../../numerics/elementary/logarithm.ts';
import { pow } from '../../numerics/elementary/power.ts';
import { forwardAngle, FULL_TURN } from '../../parts/crank-positions.ts';
import { camMotion } from '../../parts/cams/cam.ts';
import type { CamShape } from '../../parts/cams/cam-shape.ts';
import { contactForce, type Loading } from './follower-force.ts';

const [WIDTH, HEIGHT] = [180, 55];
const [LEFT, RIGHT, TOP, BOTTOM] = [14, 178, 3, 44];

/** Force [N] at a crank angle; none while the spool rests on its stop. */
function forceAt({ cam }: CamShape, loading: Loading, crankAngle: number, speed: number): number {
  const angle = forwardAngle(cam.riseBegins, crankAngle);
  const { lift, bend } = camMotion(cam, angle);
  const spool = lift - cam.lash;
  return spool <= 0 ? 0 : Math.max(0, contactForce(loading, { angle, lift: spool, bend }, speed));
}

/** A round number of newtons for about four lines. */
function stepOf(largest: number): number {
  const power = pow(10, Math.floor(log10(largest / 4)));
  return [1, 2, 5, 10].map((own) => own * power).find((own) => own * 5 >= largest) ?? 10 * power;
}

export function forceChart(shape: CamShape, loading: Loading, topSpeed: number): string {
  const angles = Array.from({ length: 361 }, (_, i) => (FULL_TURN * i) / 360);
  const [creeping, running] = [0, topSpeed].map((speed) =>
    angles.map((angle) => forceAt(shape, loading, angle, speed)),
  );
  const largest = Math.max(1e-3, ...(creeping ?? []), ...(running ?? []));
  const step = stepOf(largest);
  const lines = Array.from({ length: Math.floor(largest / step) + 1 }, (_, i) => i * step);
  const top = Math.max(largest, (lines.length - 1) * step);
  const x = (i: number): string => (LEFT + ((RIGHT - LEFT) * i) / 360).toFixed(2);
  const y = (force: number): string => (BOTTOM - ((BOTTOM - TOP) * force) / top).toFixed(2);
  const curve = (forces: readonly number[] | undefined, dashes: string): string =>
    `<path d="M${(forces ?? []).map((force, i) => `${x(i)} ${y(force)}`).join('L')}" fill="none" stroke="#000" stroke-width="0.35"${dashes}/>`;
  const label = (at: string, height: number, text: string, anchor = 'middle'): string =>
    `<text x="${at}" y="${height}" text-anchor="${anchor}">${text}</text>`;
  return [
    `<svg width="${WIDTH}mm" height="${HEIGHT}mm" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-size="3" role="img">`,
    ...lines.map(
      (force) =>
        `<path d="M${LEFT} ${y(force)}H${RIGHT}" stroke="#999" stroke-width="0.15"/>${label(String(LEFT - 1), Number(y(force)) + 1, String(Number(force.toPrecision(3))), 'end')}`,
    ),
    ...[0, 90, 180, 270, 360].map((angle) => label(x(angle), BOTTOM + 4, `${angle}°`)),
    label(
      String((LEFT + RIGHT) / 2),
      BOTTOM + 9,
      'crank angle after top dead centre; full line at the top speed, dashed creeping',
    ),
    label('1', TOP + 1, 'N', 'start'),
    curve(creeping, ' stroke-dasharray="2 1"'),
    curve(running, ''),
    '</svg>',
  ].join('');
}
