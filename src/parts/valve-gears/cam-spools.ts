/**
 * A pair of cam-driven spools: one lets air in, one lets it out, each lifted by its own cam on the crankshaft.
 * Geometry and leaks of one spool: spool.ts. Its motion: cams/cam.ts.
 */
import { kindOf } from '../../kinds/kind.ts';
import { camEdges, flankShareAtLift, spoolLiftOnFlank, type Cam } from '../cams/cam.ts';
import { crankAngle, forwardAngle } from '../crank-positions.ts';
import { fitSizes } from '../fits/clearance.ts';
import type { PartContext } from '../part-context.ts';
import { gap, port, type Opening, type Passage } from '../passage.ts';
import { thereAndBack } from '../turn-table.ts';
import { smallestBaseCircle } from './cam-spools-base-circle.ts';
import { camSpoolsComplaints } from './cam-spools-complaints.ts';
import {
  camOf,
  camSpoolsParameters,
  spoolOf,
  type CamSpools,
  type SpoolName,
} from './cam-spools-parameters.ts';
import { endResistance, mouthLifts, mouthRim, shutResistance, spoolArea, type Spool } from './spool.ts';
import { orderedEdges, steadyDrag, type DerivedSize, type ValveGear } from './valve-gear.ts';

interface DrivenSpool {
  readonly spool: Spool;
  readonly cam: Cam;
  /** Lifts [m] at which the opening of its mouth bends, and the resistance of its land. */
  readonly mouth: readonly number[];
  readonly land: readonly number[];
}

function drivenSpool(gear: CamSpools, name: SpoolName, context: PartContext): DrivenSpool {
  const spool = spoolOf(gear, name);
  const landGone = Math.max(0, spool.lap - spool.radialClearance);
  return { spool, cam: camOf(gear, name, context), mouth: mouthLifts(spool), land: [0, landGone] };
}

const edgesOf = ({ cam, mouth, land }: DrivenSpool): readonly number[] => camEdges(cam, [...land, ...mouth]);

/** A law of the lift by the crank angle; it bends at some lifts, and below and above all of them it changes no more. */
const overTurn = (cam: Cam, law: (lift: number) => number, bends: readonly number[]): Opening =>
  thereAndBack(
    (share) => law(spoolLiftOnFlank(cam, share)),
    bends.map((lift) => flankShareAtLift(cam, lift)),
    {
      leaves: cam.riseBegins,
      returns: cam.riseBegins + cam.duration,
      perStageThere: cam.flank,
      perStageBack: cam.closingFlank,
    },
    law(0),
  );

function sealingGaps(driven: DrivenSpool, name: SpoolName, context: PartContext): Passage[] {
  const { spool } = driven;
  const { gas } = context;
  if (spool.radialClearance === 0) return [];
  const ends =
    name === 'admission' ? (['chest', 'cylinder'] as const) : (['cylinder', 'atmosphere'] as const);
  const [from, to] = ends;
  const past = gap(
    gas,
    { name: `past the shut ${name} spool`, from, to },
    overTurn(driven.cam, shutResistance(spool), driven.land),
    mouthRim(spool),
  );
  const outOf = (place: 'chest' | 'cylinder'): Passage =>
    gap(
      gas,
      { name: `out of the ${name} spool's end, from the ${place}`, from: place, to: 'atmosphere' },
      endResistance(spool),
      mouthRim(spool),
    );
  return name === 'admission' ? [past, outOf('chest'), outOf('cylinder')] : [past, outOf('cylinder')];
}

function camSizes(name: SpoolName, cam: Cam): DerivedSize[] {
  return [
    {
      label: `${name} cam, crank angle where the rise begins`,
      value: forwardAngle(0, cam.riseBegins),
      dimension: 'angle',
    },
    {
      label: `${name} cam, from the begin of the rise to the end of the fall`,
      value: cam.duration,
      dimension: 'angle',
    },
    {
      label: `${name} cam, dwell at full lift`,
      value: cam.duration - cam.flank - cam.closingFlank,
      dimension: 'angle',
    },
  ];
}

const spoolSizes = (gear: CamSpools, name: SpoolName): DerivedSize[] =>
  fitSizes(`${name} spool`, gear[name].spool_diameter, gear[name].clearance);

function build(gear: CamSpools, context: PartContext): ValveGear {
  const admission = drivenSpool(gear, 'admission', context);
  const exhaust = drivenSpool(gear, 'exhaust', context);
  const area = ({ spool, cam, mouth }: DrivenSpool): Opening =>
    overTurn(cam, (lift) => spoolArea(spool, gear.discharge_coefficient, lift), mouth);
  const { gas } = context;
  // Opening and closing are what the cams were made for.
  const angleOf = (name: SpoolName, event: 'opens' | 'closes'): number =>
    forwardAngle(0, crankAngle(context.crank, gear[name][event]));
  return {
    ports: [
      port(gas, 'admission', { name: 'admission spool', from: 'chest', to: 'cylinder' }, area(admission)),
      port(gas, 'exhaust', { name: 'exhaust spool', from: 'cylinder', to: 'atmosphere' }, area(exhaust)),
    ],
    sealingGaps: [
      ...sealingGaps(admission, 'admission', context),
      ...sealingGaps(exhaust, 'exhaust', context),
    ],
    edges: orderedEdges([...edgesOf(admission), ...edgesOf(exhaust)]),
    events: {
      admission: angleOf('admission', 'opens'),
      cutOff: angleOf('admission', 'closes'),
      release: angleOf('exhaust', 'opens'),
      compression: angleOf('exhaust', 'closes'),
    },
    derivedSizes: [
      ...camSizes('admission', admission.cam),
      ...camSizes('exhaust', exhaust.cam),
      ...spoolSizes(gear, 'admission'),
      ...spoolSizes(gear, 'exhaust'),
    ],
    ...steadyDrag(gear.drive_torque),
    smallestBaseCircle: () => smallestBaseCircle(gear, context),
  };
}

export const camSpools = kindOf({
  kind: 'cam-driven spools',
  doc: 'Two waisted spools in drilled blocks, one for admission and one for exhaust, each pushed by a cam.',
  parameters: camSpoolsParameters,
  complaints: camSpoolsComplaints,
  build,
});
