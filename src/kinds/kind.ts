/**
 * A kind of part: one file, one descriptor. A family lists its kinds explicitly in one registry.
 */
import type { Parameters, Values } from './parameter.ts';

/** Something impossible about a combination of values, found before anything is built. */
export interface Complaint {
  /** Where, from the part inwards: ["admission", "lift"]. */
  readonly path: readonly string[];
  readonly expected: string;
  readonly received: string;
  readonly hint?: string;
}

/** What a first scenario with this kind needs besides the examples of its parameters, so that the engine runs. */
export interface FirstEngine {
  /** Texts by their dotted path from the top of a scenario: "start.crank_angle". Optional keys named here are given. */
  readonly values: Readonly<Record<string, string>>;
  /** Files that belong beside the scenario, by their name. */
  readonly files?: Readonly<Record<string, string>>;
}

export interface Kind<P extends Parameters, Context, Part> {
  readonly kind: string;
  readonly doc: string;
  readonly parameters: P;
  readonly firstEngine?: FirstEngine;
  /**
   * The context with this kind built in, where its presence changes what every part reckons with: a cylinder that rocks has
   * another crank train.
   */
  readonly contextWith?: <C extends Context>(values: Values<P>, context: C) => C;
  /** Impossible geometry, in words. Called before `build`; an empty list means it can be built. */
  readonly complaints?: (values: Values<P>, context: Context) => readonly Complaint[];
  readonly build: (values: Values<P>, context: Context) => Part;
}

/** A kind whose parameter types have been closed over, so that unlike kinds fit one list. */
export interface AnyKind<Context, Part> {
  readonly kind: string;
  readonly doc: string;
  readonly parameters: Parameters;
  readonly firstEngine?: FirstEngine;
  /** Binds checked values, which must come from this kind's own parameters. */
  readonly choose: (values: Readonly<Record<string, unknown>>) => Chosen<Context, Part>;
}

/** A kind with its values: what a scenario hands to the model. */
export interface Chosen<Context, Part> {
  readonly kind: string;
  readonly values: Readonly<Record<string, unknown>>;
  contextWith<C extends Context>(context: C): C;
  complaints(context: Context): readonly Complaint[];
  build(context: Context): Part;
}

export interface Family<Context, Part> {
  /** The trade's word for the family: "valve gear". */
  readonly name: string;
  readonly kinds: readonly AnyKind<Context, Part>[];
  /** Type carrier only; never set. */
  readonly chosen?: Chosen<Context, Part>;
}

/** Closes over the parameter types of one kind. */
export function kindOf<const P extends Parameters, Context, Part>(
  descriptor: Kind<P, Context, Part>,
): AnyKind<Context, Part> {
  const { kind, doc, parameters, firstEngine } = descriptor;
  return {
    kind,
    doc,
    parameters,
    ...(firstEngine === undefined ? {} : { firstEngine }),
    choose: (values) => {
      // The scenario reader has checked every value against `parameters`; this is the one place that trusts it.
      const own = values as unknown as Values<P>;
      return {
        kind,
        values,
        contextWith: (context) => descriptor.contextWith?.(own, context) ?? context,
        complaints: (context) => descriptor.complaints?.(own, context) ?? [],
        build: (context) => descriptor.build(own, context),
      };
    },
  };
}
