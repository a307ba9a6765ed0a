/** Every shape a leak can be told as. To add one: a file beside this one and a line here. */
import { annulus } from './annulus.ts';
import type { GapShapeFamily } from './gap-shape.ts';
import { ringFace } from './ring-face.ts';
import { slit } from './slit.ts';

export const gapShapes: GapShapeFamily = { name: 'gap', kinds: [annulus, slit, ringFace] };
