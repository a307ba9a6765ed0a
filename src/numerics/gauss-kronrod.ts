/**
 * Integrals by the rule of Gauss and Kronrod with 15 places, 7 of which are Gauss's own: how far the two rules are apart
 * is how far the smaller is off, and the larger by much less. The panel that is most in doubt is halved until all doubts
 * together are nothing beside the whole.
 *
 * Piessens, de Doncker-Kapenga, Überhuber, Kahaner, QUADPACK, Springer 1983: the rule QK15 (places and weights seen in
 * several programs that say they have them from there; the tests see what they are exact for), and QAG, which halves.
 */

/** Writes the densities of all quantities at a place; the first of them says where to look closely. */
export type Densities = (x: number, out: Float64Array) => void;

/** Places from the middle outward, as shares of half a panel: by turns of both rules, and of the larger alone. */
const PLACES = [
  0, 0.2077849550078985, 0.4058451513773972, 0.5860872354676911, 0.7415311855993945, 0.8648644233597691,
  0.9491079123427585, 0.9914553711208126,
];
const WEIGHTS = [
  0.2094821410847278, 0.2044329400752989, 0.1903505780647854, 0.1690047266392679, 0.1406532597155259,
  0.1047900103222502, 0.0630920926299786, 0.022935322010529224,
];
const WEIGHTS_OF_GAUSS = [
  0.4179591836734694, 0, 0.3818300505051189, 0, 0.27970539148927664, 0, 0.1294849661688697, 0,
];

/** What the smaller rule may be off by, as a share of the whole; the larger is off by its square, or nearly so. */
const CLOSE = 1e-11;

/** Enough to close in on a pole beyond the end to the last digit, few enough where rounding lets no doubt fall. */
const MOST_PANELS = 100;

interface Panel {
  readonly from: number;
  readonly to: number;
  readonly values: Float64Array;
  readonly doubt: number;
}

/** The integrals of so many quantities over a stretch; infinite where a density is. A short stretch may do with one panel. */
export function integrals(
  densities: Densities,
  count: number,
  [from, to]: readonly [number, number],
  mostPanels = MOST_PANELS,
): Float64Array {
  let panels = [panel(densities, count, from, to)];
  let sums = panels[0]!.values;
  while (panels.length < mostPanels) {
    const doubts = panels.map(({ doubt }) => doubt);
    // Said of what is infinite, this is not true either.
    if (!(doubts.reduce((sum, doubt) => sum + doubt) > CLOSE * Math.abs(sums[0]!))) break;
    const worst = doubts.indexOf(Math.max(...doubts));
    const { from, to } = panels[worst]!;
    const middle = (from + to) / 2;
    const halves = [panel(densities, count, from, middle), panel(densities, count, middle, to)];
    panels = panels.toSpliced(worst, 1, ...halves);
    sums = sums.map((_, k) => panels.reduce((sum, { values }) => sum + values[k]!, 0));
  }
  return sums;
}

function panel(densities: Densities, count: number, from: number, to: number): Panel {
  const [middle, half] = [(from + to) / 2, (to - from) / 2];
  const values = new Float64Array(count);
  const density = new Float64Array(count);
  let ofGauss = 0;
  const add = (i: number, x: number): void => {
    densities(x, density);
    for (let k = 0; k < count; k += 1) values[k]! += half * WEIGHTS[i]! * density[k]!;
    ofGauss += half * WEIGHTS_OF_GAUSS[i]! * density[0]!;
  };
  add(0, middle);
  for (let i = 1; i < PLACES.length; i += 1) {
    add(i, middle - half * PLACES[i]!);
    add(i, middle + half * PLACES[i]!);
  }
  return { from, to, values, doubt: Math.abs(values[0]! - ofGauss) };
}
