/**
 * A smaller gap at the largest leak. Which value of the scenario makes that gap is asked of the engine itself: the one
 * that lets least through there when it is made two thirds, or a step finer.
 */
import { buildEngine } from '../../model/engine.ts';
import type { EngineSpec } from '../../parts/engine-description.ts';
import type { ChangedSetting } from '../../run/trials.ts';
import type { GivenSetting } from '../next-changes.ts';
import { parseQuantity } from '../../quantity/parse-quantity.ts';
import { practicalSteps } from '../practical-step.ts';
import { changedTo, type ChangeableEngine, type RemedyRule } from './remedy.ts';
import { rungsBy } from './rungs.ts';

const FACTORS = [2 / 3, 1 / 2, 1 / 3, 1 / 4];

/** Finishes and fits are tried up to so many steps finer. */
const STEPS = 2;

/** Gaps smaller than what lapping leaves are no advice [m]: common practice, no source. */
const CLOSEST = 5e-6;

/** A value with which more than this share of the leak is left does not make its gap: of a laminar one 0.3 is left. */
const KEPT = 0.5;

export const closerFit: RemedyRule = (engine, result) => {
  const { crankAngle } = result.outcome;
  const leak = result.standStill?.leaks[0]?.name ?? worstLeak(engine.spec, crankAngle);
  if (leak === undefined) return undefined;
  const setting = settingOf(engine, leak, crankAngle);
  if (setting === undefined) return undefined;
  const alike = engine.given.filter((own) => isAlike(own, setting));
  return {
    what: `a smaller gap at the largest leak, “${leak}”`,
    rungs: rungsOf(setting).map((rung) =>
      alike.flatMap(({ path }) => rung.map((own): ChangedSetting => ({ ...own, path }))),
    ),
  };
};

/** What was made with the same tools is made with other ones together. */
const isAlike = (one: GivenSetting, other: GivenSetting): boolean =>
  one.text === other.text && kindOfGap(one) === kindOfGap(other);

/** "valve_gear.clearance" of both spools. */
const kindOfGap = ({ path }: GivenSetting): string => path.replace(/\..*\./u, '.');

function rungsOf(setting: GivenSetting): (readonly ChangedSetting[])[] {
  const { path, text, parameter } = setting;
  if (parseQuantity(text, 'length', '').ok) return rungsBy([setting], FACTORS).filter(canBeMade);
  const rungs: (readonly ChangedSetting[])[] = [];
  let finer = practicalSteps(text, parameter).down;
  while (finer !== undefined && rungs.length < STEPS) {
    rungs.push([{ path, now: text, then: finer }]);
    finer = practicalSteps(finer, parameter).down;
  }
  return rungs;
}

const canBeMade = (rung: readonly ChangedSetting[]): boolean =>
  rung.every(({ then }) => {
    const gap = parseQuantity(then, 'length', '');
    return gap.ok && gap.value >= CLOSEST;
  });

/** What leaks from a pressure into the room at a crank angle, by the names of the leaks [kg/s]. */
function leakFlows(spec: EngineSpec, angle: number, pressure: number): ReadonlyMap<string, number> {
  const { passages, supply, atmosphere } = buildEngine(spec);
  const flows = new Map<string, number>();
  for (const { name, role, lag, passage } of passages) {
    if (role !== 'leak') continue;
    const { pressure: room, temperature } = atmosphere;
    const flow = passage.massFlow(angle - lag, pressure, supply.temperature, room, temperature, 0);
    flows.set(name, (flows.get(name) ?? 0) + flow);
  }
  return flows;
}

/** Of an engine that has not come to rest: what would leak most under all the pressure there is. */
function worstLeak(spec: EngineSpec, angle: number): string | undefined {
  const [worst] = [...leakFlows(spec, angle, spec.supply.pressure)].sort(([, a], [, b]) => b - a);
  return worst?.[0];
}

/** Under next to no pressure every gap is laminar, and nothing tells on the flow as much as its height. */
const NEXT_TO_NONE = 1.001;

function settingOf(engine: ChangeableEngine, leak: string, angle: number): GivenSetting | undefined {
  const pressure = NEXT_TO_NONE * engine.spec.atmosphere.pressure;
  const flowOf = (spec: EngineSpec): number => leakFlows(spec, angle, pressure).get(leak) ?? 0;
  const most = KEPT * flowOf(engine.spec);
  let found: { readonly setting: GivenSetting; readonly flow: number } | undefined;
  for (const setting of engine.given.filter(mayBeGap)) {
    const [rung] = rungsOf(setting);
    const changed = rung && changedTo(engine, rung);
    const flow = changed ? flowOf(changed) : Infinity;
    if (flow < (found?.flow ?? most)) found = { setting, flow };
  }
  return found?.setting;
}

const mayBeGap = ({ path, parameter }: GivenSetting): boolean =>
  /^(?:valve_gear|leaks)\./u.test(path) &&
  (parameter.type === 'clearance' || (parameter.type === 'quantity' && parameter.dimension === 'length'));
