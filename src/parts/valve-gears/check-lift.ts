/**
 * A valve that is held on its seat by a spring, by its weight and by the chest, and blown off it when the cylinder stands
 * above the chest by more than the spring bears:
 *
 *   lift = rise · u² (3 − 2u),   u = (Δp − F/A)/Δp_full, from 0 to 1
 *
 * F the spring's force shut, A the seat's bore. It stands wide open at twice the pressure that cracks it, or, if that is
 * less, at 50 mbar beyond: enough to carry the weight of a ball and move it in time, and little beside the pressures of an
 * engine. Quasi-steady: the valve is where the pressures of the moment want it, without mass. Common practice, no source.
 */
export interface CheckedSeat {
  /** A [m²]. */
  readonly seatArea: number;
  /** F [N]. */
  readonly springForce: number;
  /** Greatest lift [m]. */
  readonly rise: number;
}

/** [Pa]. */
const WIDE_OPEN = 5e3;

/** Lift [m] under what the cylinder has above the chest [Pa]. */
export function checkLift({ seatArea, springForce, rise }: CheckedSeat): (excess: number) => number {
  const cracking = springForce / seatArea;
  const span = Math.max(cracking, WIDE_OPEN);
  return (excess) => {
    const u = Math.min(1, Math.max(0, (excess - cracking) / span));
    return rise * u * u * (3 - 2 * u);
  };
}
