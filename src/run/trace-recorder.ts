/**
 * Records a run of unknown length in a bounded number of points: when full, every other point is dropped and the
 * spacing doubles.
 */
import { SLOT } from '../model/slots.ts';
import type { EngineSystem } from '../model/system.ts';
import type { ComponentReader } from '../numerics/integrator.ts';
import type { Trace } from './result.ts';

const MOST_POINTS = 4000;
const FIRST_SPACING = 5e-4;

interface Point {
  readonly time: number;
  readonly crankAngle: number;
  readonly speed: number;
  readonly chestPressure: number;
  readonly cylinderPressure: number;
}

export interface TraceRecorder {
  /** Notes the state unless the last note is too recent. */
  note(component: ComponentReader): void;
  /** Notes the state however recent the last note: a moment that must not be missed. */
  mark(component: ComponentReader): void;
  /** The trace so far, closed with the given state. */
  finish(last: Float64Array): Trace;
}

export function traceRecorder(system: EngineSystem): TraceRecorder {
  let points: Point[] = [];
  let spacing = FIRST_SPACING;
  const { chest, ends } = system.engine;
  const state = new Float64Array(system.dimension);

  const pointAt = (component: ComponentReader): Point => {
    for (let i = 0; i < system.slots.firstTotal; i += 1) state[i] = component(i);
    const { pressure } = system.observe(state);
    return {
      time: component(SLOT.time),
      crankAngle: component(SLOT.crankAngle),
      speed: component(SLOT.speed),
      chestPressure: pressure[chest]!,
      cylinderPressure: pressure[ends[0].place]!,
    };
  };
  const lastTime = (): number => points.at(-1)?.time ?? -Infinity;
  const add = (point: Point): void => {
    points.push(point);
    if (points.length < MOST_POINTS) return;
    points = points.filter((_, i) => i % 2 === 0);
    spacing *= 2;
  };
  const column = (key: keyof Point): Float64Array => Float64Array.from(points, (point) => point[key]);

  return {
    note(component) {
      if (component(SLOT.time) - lastTime() >= spacing) add(pointAt(component));
    },
    mark(component) {
      if (component(SLOT.time) > lastTime()) add(pointAt(component));
    },
    finish(last) {
      const closing = pointAt((i) => last[i]!);
      if (closing.time > lastTime()) points.push(closing);
      return {
        time: column('time'),
        crankAngle: column('crankAngle'),
        speed: column('speed'),
        chestPressure: column('chestPressure'),
        cylinderPressure: column('cylinderPressure'),
      };
    },
  };
}
