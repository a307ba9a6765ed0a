/** A DXF file through an independent reader (dxf-parser): closed shapes by layer, in metres. */
import { createRequire } from 'node:module';
import type { DxfParser as Reader, ICircleEntity, IEntity, ILwpolylineEntity } from 'dxf-parser';
import type { Outline } from '../../src/workshop/geometry/outline.ts';
import { circle } from '../../src/workshop/geometry/shapes.ts';

// Its types promise a named export that its bundle does not have.
const DxfParser = createRequire(import.meta.url)('dxf-parser') as typeof Reader;

const MM = 1e-3;

export interface ReadDxf {
  /** 4 for millimetres. */
  readonly units: unknown;
  readonly layers: readonly string[];
  readonly entities: readonly IEntity[];
}

export function readDxf(text: string): ReadDxf {
  const parsed = new DxfParser().parseSync(text);
  if (parsed === null) throw new Error('not a DXF file');
  return {
    units: parsed.header['$INSUNITS'],
    layers: Object.keys(parsed.tables.layer.layers),
    entities: parsed.entities,
  };
}

const isPolyline = (entity: IEntity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE';
const isCircle = (entity: IEntity): entity is ICircleEntity => entity.type === 'CIRCLE';

/** Every shape on a layer that a tool follows; throws for a line that is not closed. */
export function shapesOn(text: string, layer: string): Outline[] {
  return on(text, layer).map((entity) => {
    const shape = shapeOf(entity);
    if (shape === undefined) throw new Error(`a ${entity.type} that is not closed on ${layer}`);
    return shape;
  });
}

/** The closed shapes among the lines of a layer. */
export const closedOn = (text: string, layer: string): Outline[] =>
  on(text, layer)
    .map(shapeOf)
    .filter((shape) => shape !== undefined);

const on = (text: string, layer: string): IEntity[] =>
  readDxf(text).entities.filter((entity) => entity.layer === layer);

function shapeOf(entity: IEntity): Outline | undefined {
  if (isCircle(entity))
    return circle(entity.radius * MM, { x: entity.center.x * MM, y: entity.center.y * MM });
  if (!isPolyline(entity) || !entity.shape) return undefined;
  // The reader leaves a bulge of nothing out, whatever its types say.
  return entity.vertices.map(({ x, y, bulge = 0 }: { x: number; y: number; bulge?: number }) => ({
    x: x * MM,
    y: y * MM,
    bulge,
  }));
}
