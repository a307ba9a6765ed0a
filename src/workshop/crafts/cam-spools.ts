/** Cams, hub, spools, blocks and springs of a pair of cam-driven spools. */
import type { Complaint } from '../../kinds/kind.ts';
import { camSpools } from '../../parts/valve-gears/cam-spools.ts';
import {
  camSpoolsParameters,
  type CamSpools,
  type SpoolName,
} from '../../parts/valve-gears/cam-spools-parameters.ts';
import { camDrawing } from '../cams/cam-drawing.ts';
import { planCam, type CamPlan } from '../cams/cam-plan.ts';
import { hubDrawing } from '../cams/hub-drawing.ts';
import { craftOf, type Made, type Order } from './craft.ts';
import type { PartDrawing } from '../drawing/drawing.ts';
import { WALL } from '../drawing/metal.ts';
import { degrees, inMm, mm } from '../drawing/words.ts';
import { blockDrawing } from '../spools/block-drawing.ts';
import { spoolDrawing } from '../spools/spool-drawing.ts';
import { planSpool, spoolMass, type SpoolPlan } from '../spools/spool-plan.ts';
import { chooseSpring, type ChosenSpring } from '../springs/spring-choice.ts';
import { springDrawing } from '../springs/spring-drawing.ts';

const names: readonly SpoolName[] = ['admission', 'exhaust'];

interface Plans {
  readonly name: SpoolName;
  readonly cam: CamPlan;
  readonly spool: SpoolPlan;
  readonly spring: ChosenSpring;
}

function springFor(gear: CamSpools, { shape }: CamPlan, spool: SpoolPlan): ChosenSpring | Complaint {
  const { springs } = gear;
  const found = chooseSpring({
    cam: shape.cam,
    // A third for the follower and the spring's share.
    mass: springs.moving_mass ?? (4 / 3) * spoolMass(spool),
    speed: springs.top_speed * springs.speed_margin,
    travel: spool.lift + spool.overTravel,
    pilot: spool.pilotDiameter,
    wire: springs.wire_diameter,
    coilDiameter: springs.coil_diameter,
    activeCoils: springs.active_coils,
    preload: springs.preload,
  });
  if (found === undefined)
    return {
      path: ['springs', 'top_speed'],
      expected: 'a speed that a spring of usual wire can hold these spools to',
      received: `${((springs.top_speed * 30) / Math.PI).toFixed(0)} rpm with a margin of ${springs.speed_margin}`,
      hint: 'Lighter spools, a longer flank, less lift, or more room for thicker wire. A given wire, coil or preload may stand in the way.',
    };
  const outside = found.coilDiameter + found.wire;
  if (outside > spool.collarDiameter || found.coilDiameter - found.wire < spool.pilotDiameter)
    return {
      path: ['springs', 'coil_diameter'],
      expected: `between ${inMm(spool.pilotDiameter + found.wire)} and ${inMm(spool.collarDiameter - found.wire)}, to go round the pilot and rest on the collar`,
      received: inMm(found.coilDiameter),
    };
  return found;
}

function plansOf(gear: CamSpools, name: SpoolName, order: Order): Plans | readonly Complaint[] {
  const planning = planCam(gear, name, order.context);
  if (!planning.ok) return planning.complaints;
  const spool = planSpool(gear, name);
  const spring = springFor(gear, planning.plan, spool);
  const complaints = [...blockComplaints(spool), ...('path' in spring ? [spring] : [])];
  return 'path' in spring || complaints.length > 0 ? complaints : { name, cam: planning.plan, spool, spring };
}

/** The walls of the block beside its bore. */
function blockComplaints({ diameter, blockWidth }: SpoolPlan): Complaint[] {
  const least = diameter + 2 * WALL;
  if (blockWidth >= least - 1e-9) return [];
  return [
    {
      path: ['blocks', 'width'],
      expected: `at least ${inMm(least)}, to leave ${inMm(WALL)} of metal beside the bore`,
      received: inMm(blockWidth),
    },
  ];
}

const isPlans = (found: Plans | readonly Complaint[]): found is Plans => 'cam' in found;

function partsOf(gear: CamSpools, { name, cam, spool, spring }: Plans, { deadCentre }: Order): PartDrawing[] {
  return [
    camDrawing(gear, name, cam, deadCentre),
    spoolDrawing(name, spool, spring),
    blockDrawing(name, spool, spring),
    springDrawing(gear, name, cam, spring),
  ];
}

function adjustment({ cams, ...gear }: CamSpools): string[] {
  const { admission, exhaust } = gear;
  return [
    `Feeler of ${mm(admission.lash)} mm between cam and admission spool on the base circle, ${mm(exhaust.lash)} mm at the exhaust: set the lash first, it moves every event.`,
    ...(cams.fixing === 'clamp slots'
      ? [
          'Clamp both cams lightly, the slots in the middle, the marks along the followers with the crank at top dead centre.',
          'Turn the engine forwards, always the same way to take up the play, until a breath of air at low pressure, or a dial indicator that has gone lash and lap from rest, says that the admission opens. Turn the admission cam until the wheel then reads the angle of the table. Tighten.',
          'The same with the exhaust: set it by its opening.',
          `The slots give ${degrees(cams.adjustment / 2)} either way. If that is not enough, the hub is keyed in the wrong place, or the cam is on back to front.`,
        ]
      : [
          'The cams are keyed: check every event, and correct small errors by the lash or with a stepped key.',
        ]),
    'Check closing too. Opening and closing off by the same angle, one early and one late, is lash or lap, not the cam.',
    'Turn it over by hand through two full turns before the air is put on: nothing may bind, and no spool may reach its stop.',
    'Pin or mark the cams, then repeat all readings once with the engine warm.',
  ];
}

function make(gear: CamSpools, order: Order): Made {
  const found = names.map((name) => plansOf(gear, name, order));
  const complaints = found.flatMap((own) => (isPlans(own) ? [] : own));
  const plans = found.filter(isPlans);
  const [first] = plans;
  if (complaints.length > 0 || first === undefined) return { parts: [], adjustment: [], complaints };
  return {
    parts: [
      ...plans.flatMap((own) => partsOf(gear, own, order)),
      ...(gear.cams.fixing === 'clamp slots' ? [hubDrawing(gear, first.cam, order.deadCentre)] : []),
    ],
    adjustment: adjustment(gear),
    complaints: [],
  };
}

export const camSpoolsCraft = craftOf(camSpools, camSpoolsParameters, make);
