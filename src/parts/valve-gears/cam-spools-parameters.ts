/** What a pair of cam-driven spools is described by. */
import { choice, crankPosition, group, optional, pureNumber, quantity } from '../../kinds/describe.ts';
import type { Values } from '../../kinds/parameter.ts';
import { camFor, type Cam } from '../cams/cam.ts';
import { camLawNamed, camLaws } from '../cams/cam-law.ts';
import { crankAngle } from '../crank-positions.ts';
import { clearance, clearanceOf } from '../fits/clearance.ts';
import type { PartContext } from '../part-context.ts';
import { blocks, cams, springs } from './cam-spools-making.ts';
import type { Spool } from './spool.ts';
import { measuring } from '../measuring.ts';

const spoolParameters = (opens: string, closes: string) => ({
  spool_diameter: quantity(
    'length',
    { min: 2e-3, max: 0.1 },
    '12 mm',
    'Diameter of the spool and its bore.',
    'Micrometer on the spool.',
  ),
  waist_diameter: quantity(
    'length',
    { min: 5e-4, max: 0.1 },
    '6 mm',
    'Diameter of the turned-down waist.',
    'Callipers in the waist.',
  ),
  waist_length: quantity(
    'length',
    { min: 5e-4, max: 0.2 },
    '8 mm',
    'Length of the waist along the spool.',
    'Callipers between the two shoulders of the waist.',
  ),
  hole_diameter: quantity(
    'length',
    { min: 2e-4, max: 0.08 },
    '6 mm',
    'Diameter of the passage drilled across.',
    measuring.holeDiameter,
  ),
  clearance: clearance(
    '8 um',
    'Play of the spool in its bore: radial, half the difference of the diameters, or as a fit or two finishes.',
    measuring.clearance,
    'spool_diameter',
  ),
  eccentricity: pureNumber(
    { min: 0, max: 1, default: 1 },
    '1',
    'Offset over clearance: 0 runs centred, 1 lies on the wall, as nothing centres a home-made spool.',
  ),
  lap: quantity(
    'length',
    { min: 0, max: 0.05 },
    '1 mm',
    "How far the land covers the hole's edge on the waist side when the valve is shut.",
    "Valve shut, cam on its base circle: from the waist's shoulder to the near edge of the hole; push a " +
      'wire through the hole and scribe the spool.',
  ),
  end_land: quantity(
    'length',
    { min: 0, max: 0.2 },
    '8 mm',
    "Land on the other side, from the hole's edge to the open end of the bore, valve shut.",
    "A depth gauge from the open end of the bore to the hole's far edge.",
  ),
  lift: quantity(
    'length',
    { min: 1e-4, max: 0.1 },
    '7.2 mm',
    'Full lift of the cam.',
    'Dial gauge or callipers on the end of the spool, over one turn.',
  ),
  lash: quantity(
    'length',
    { min: 0, max: 5e-3, default: 0 },
    '0.2 mm',
    'Play between cam and spool.',
    'Feeler between cam and spool, cam on its base circle.',
  ),
  flank: quantity(
    'angle',
    { min: (5 * Math.PI) / 180, max: Math.PI },
    '50 deg',
    'Crank angle that the cam takes from its base circle to full lift.',
    'Degree disc and dial gauge: the angle from the first movement to full lift. If it is too long for ' +
      'the opening you want, the program says how long it may be.',
  ),
  closing_flank: optional(
    quantity(
      'angle',
      { min: (5 * Math.PI) / 180, max: Math.PI },
      '70 deg',
      'Crank angle that it takes back from full lift to the base circle; if not given, as long as the flank.',
      'Degree disc and dial gauge: the angle from the end of full lift to the last movement.',
    ),
  ),
  cam_law: choice(
    camLaws.map(({ name }) => name),
    'How the flank rises.',
    'harmonic',
  ),
  opens: crankPosition(opens, 'Where the waist begins to uncover the hole.', measuring.opens),
  closes: crankPosition(closes, 'Where the hole has just been covered again.', measuring.closes),
});

export const camSpoolsParameters = {
  discharge_coefficient: pureNumber(
    { min: 0.3, max: 1, default: 0.65 },
    '0.65',
    'Of each mouth and of the way round the waist; sharp edges 0.6–0.8.',
    measuring.dischargeCoefficient,
  ),
  drive_torque: quantity(
    'torque',
    { min: 0, max: 100, default: 0 },
    '0.05 N m',
    'Mean torque at the crankshaft that pushing the spools takes.',
    measuring.driveTorque,
  ),
  admission: group(
    'The spool that lets air into the cylinder, and its cam.',
    spoolParameters('-5 deg', '50 % of stroke'),
  ),
  exhaust: group(
    'The spool that lets air out, and its cam.',
    spoolParameters('170 deg', '90 % of return stroke'),
  ),
  cams,
  springs,
  blocks,
};

export type CamSpools = Values<typeof camSpoolsParameters>;
export type SpoolName = 'admission' | 'exhaust';

export function spoolOf(gear: CamSpools, name: SpoolName): Spool {
  const own = gear[name];
  return {
    boreDiameter: own.spool_diameter,
    waistDiameter: own.waist_diameter,
    waistLength: own.waist_length,
    holeDiameter: own.hole_diameter,
    radialClearance: clearanceOf(own.spool_diameter, own.clearance).mean,
    eccentricity: own.eccentricity,
    lap: own.lap,
    endLand: own.end_land,
  };
}

export function camOf(gear: CamSpools, name: SpoolName, context: PartContext): Cam {
  const { cam_law, lift, lash, flank, closing_flank, lap, opens, closes } = gear[name];
  return camFor({
    law: camLawNamed(cam_law),
    lift,
    lash,
    flank,
    closingFlank: closing_flank ?? flank,
    lap,
    opens: crankAngle(context.crank, opens),
    closes: crankAngle(context.crank, closes),
  });
}
