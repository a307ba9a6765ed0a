/** What the workshop knows to make of a kind of valve gear. The registry beside this file lists them. */
import type { AnyKind, Chosen, Complaint } from '../../kinds/kind.ts';
import type { Parameters, Values } from '../../kinds/parameter.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { PartContext } from '../../parts/part-context.ts';
import type { ValveGear } from '../../parts/valve-gears/valve-gear.ts';
import type { PartDrawing } from '../drawing/drawing.ts';

/** The engine a gear is made for. */
export interface Order {
  readonly spec: EngineSpec;
  /** As the gear's own cylinder end sees the engine. */
  readonly context: PartContext;
  readonly gear: ValveGear;
  /** What the dead centre its angles count from is called on a mark. */
  readonly deadCentre: 'TDC' | 'BDC';
}

export interface Made {
  readonly parts: readonly PartDrawing[];
  /** Steps that set this gear, after the dead centre has been found. */
  readonly adjustment: readonly string[];
  /** Geometry that cannot be made, from the valve gear inwards; the parts are then of no use. */
  readonly complaints: readonly Complaint[];
}

export interface Craft {
  readonly kind: string;
  make(chosen: Chosen<PartContext, ValveGear>, order: Order): Made;
}

/** Closes over the type of a kind's values; `parameters` are the kind's own, and lend it their type. */
export function craftOf<const P extends Parameters>(
  kind: AnyKind<PartContext, ValveGear>,
  parameters: P,
  make: (own: Values<P>, order: Order) => Made,
): Craft {
  if (kind.parameters !== parameters) throw new Error(`these are not the parameters of "${kind.kind}"`);
  // The scenario reader has checked every value against these parameters.
  return { kind: kind.kind, make: ({ values }, order) => make(values as unknown as Values<P>, order) };
}
