/** From a checked description of an engine to what its builder cuts: the parts of its valve gear, and how it is set. */
import type { Complaint } from '../kinds/kind.ts';
import { crankTrain } from '../parts/cylinder.ts';
import { partContext, type EngineSpec } from '../parts/engine-description.ts';
import type { Made } from './crafts/craft.ts';
import { crafts } from './crafts/registry.ts';
import type { PartDrawing } from './drawing/drawing.ts';
import { settingEvents } from './setting/events.ts';
import type { Setting } from './setting/setting-sheet.ts';

export interface Workshop {
  readonly parts: readonly PartDrawing[];
  readonly setting: Setting;
  /** Why there are no parts, located in the scenario. */
  readonly complaints: readonly Complaint[];
}

type Side = 'cover' | 'crank';

const NOTHING: Made = { parts: [], adjustment: [], complaints: [] };

const GENERAL_ADJUSTMENT: readonly string[] = [
  'Set the opening of the admission first, then that of the exhaust, each by the angle of the table.',
  'Check both closings; then turn the engine over by hand through two full turns before the air is put on.',
];

/** Parts of the crank end are other parts, with names of their own. */
const ofCrankEnd = (part: PartDrawing): PartDrawing => ({
  ...part,
  id: `crank-end-${part.id}`,
  name: `${part.name}, crank end`,
});

export function workshopOf(spec: EngineSpec): Workshop {
  const { cylinder, valve_gear: chosen } = spec;
  const sides: readonly Side[] = cylinder.action === 'double' ? ['cover', 'crank'] : ['cover'];
  const craft = crafts.find(({ kind }) => kind === chosen.kind);
  const ends = sides.map((side) => {
    const context = { ...partContext(spec), crank: crankTrain(cylinder, side) };
    const gear = chosen.build(context);
    const made =
      craft?.make(chosen, { spec, context, gear, deadCentre: side === 'cover' ? 'TDC' : 'BDC' }) ?? NOTHING;
    return { side, gear, made };
  });
  const parts = ends.flatMap(({ side, made }) =>
    made.parts.map((part) => (side === 'cover' ? part : ofCrankEnd(part))),
  );
  const adjustment = ends[0]?.made.adjustment ?? [];
  return {
    parts: parts.map((part) => ({ ...part, quantity: part.quantity * cylinder.cylinders })),
    setting: {
      title: chosen.kind,
      crank: crankTrain(cylinder),
      ends: ends.map(({ side, gear }) => ({
        name: side,
        events: settingEvents(gear.events, side === 'cover' ? 0 : Math.PI),
      })),
      adjustment: adjustment.length > 0 ? adjustment : GENERAL_ADJUSTMENT,
    },
    complaints: ends
      .flatMap(({ made }) => made.complaints)
      .map((complaint) => ({ ...complaint, path: ['valve_gear', ...complaint.path] })),
  };
}
