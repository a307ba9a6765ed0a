/** What only the drawings of cams, springs, spools and their blocks ask for. Everything here has a default. */
import { choice, count, group, optional, pureNumber, quantity } from '../../kinds/describe.ts';
import { turnings } from './turnings.ts';

const RPM = (2 * Math.PI) / 60;

export const cams = group('How the cams are made; only the drawings ask for it.', {
  follower: choice(
    ['roller', 'flat'],
    'What rides on the cam: a roller, or a flat face square to its axis.',
    'roller',
  ),
  roller_diameter: quantity(
    'length',
    { min: 2e-3, max: 0.1, default: 10e-3 },
    '10 mm',
    'Diameter of the roller.',
  ),
  follower_offset: quantity(
    'length',
    { min: -0.05, max: 0.05, default: 0 },
    '2 mm',
    "How far the axis of a roller follower passes beside the shaft, on the side where the cam's nose comes up; it lowers the pressure angle of the rise and raises that of the fall.",
  ),
  base_circle: optional(
    quantity(
      'length',
      { min: 4e-3, max: 0.5 },
      '44 mm',
      'Diameter of the base circle; if not given, the smallest that keeps the limits below and leaves metal round the fixing, up to the next millimetre.',
    ),
  ),
  smallest_radius: quantity(
    'length',
    { min: 1e-4, max: 0.05, default: 2e-3 },
    '2 mm',
    'Sharpest rounding allowed on the nose of the cam; a sharper one wears away.',
  ),
  largest_pressure_angle: quantity(
    'angle',
    { min: (5 * Math.PI) / 180, max: (60 * Math.PI) / 180, default: Math.PI / 6 },
    '30 deg',
    'How far the push of a roller may slant from the axis of the follower before it jams.',
  ),
  thickness: quantity(
    'length',
    { min: 5e-4, max: 0.05, default: 6e-3 },
    '6 mm',
    'Plate that the cam is cut from.',
  ),
  shaft_diameter: quantity(
    'length',
    { min: 3e-3, max: 0.1, default: 12e-3 },
    '12 mm',
    'Crankshaft where the cam sits.',
  ),
  fixing: choice(
    ['clamp slots', 'keyway'],
    'Slots let the cam be turned on a hub that is keyed to the shaft; a keyway fixes it for good.',
    'clamp slots',
  ),
  clamp_screws: count({ min: 2, max: 6, default: 3 }, 'How many screws clamp the cam to its hub.'),
  clamp_screw: quantity(
    'length',
    { min: 2e-3, max: 0.012, default: 4e-3 },
    '4 mm',
    'Nominal thread diameter of the clamp screws.',
  ),
  clamp_circle: optional(
    quantity(
      'length',
      { min: 6e-3, max: 0.3 },
      '26 mm',
      'Diameter of the circle of the clamp screws; if not given, as small as the shaft and the screw heads allow.',
    ),
  ),
  adjustment: quantity(
    'angle',
    { min: 0, max: (90 * Math.PI) / 180, default: (20 * Math.PI) / 180 },
    '20 deg',
    'Range over which the slots let the cam be turned, half of it to either side.',
  ),
  key_width: quantity('length', { min: 1e-3, max: 0.02, default: 4e-3 }, '4 mm', 'Width of the key.'),
  key_depth: quantity(
    'length',
    { min: 2e-4, max: 0.01, default: 1.8e-3 },
    '1.8 mm',
    'How far the keyway reaches beyond the bore of the hub.',
  ),
  turning: choice(
    turnings,
    'Which way the shaft turns, seen on the side that the drawing shows.',
    'clockwise',
  ),
});

export const springs = group('How the spools are held against their cams; only the drawings ask for it.', {
  top_speed: quantity(
    'rotational speed',
    { min: 10 * RPM, max: 10_000 * RPM, default: 600 * RPM },
    '600 rpm',
    'Speed up to which the followers have to stay on their cams.',
  ),
  speed_margin: pureNumber(
    { min: 1, max: 4, default: 1.5 },
    '1.5',
    'How many times that speed the follower should float at, at least; friction in the bore takes its part.',
  ),
  moving_mass: optional(
    quantity(
      'mass',
      { min: 1e-4, max: 10 },
      '40 g',
      'Spool with follower and collar, and a third of the spring; if not given, that of a steel spool and a third more.',
    ),
  ),
  preload: optional(
    quantity(
      'force',
      { min: 0, max: 5000 },
      '12 N',
      'Force of the spring with the valve shut; chosen if not given.',
    ),
  ),
  wire_diameter: optional(
    quantity('length', { min: 2e-4, max: 0.01 }, '1 mm', 'Wire of the spring; chosen if not given.'),
  ),
  coil_diameter: optional(
    quantity(
      'length',
      { min: 1e-3, max: 0.1 },
      '14 mm',
      'Mean diameter of the coils; if not given, as wide as goes over the spool.',
    ),
  ),
  active_coils: optional(
    pureNumber({ min: 1, max: 60 }, '7.5', 'Coils that work, closed ends not counted; chosen if not given.'),
  ),
});

export const blocks = group(
  'How the spools and the blocks they slide in are made; only the drawings ask for it.',
  {
    width: optional(
      quantity(
        'length',
        { min: 4e-3, max: 0.3 },
        '30 mm',
        'Width and height of the block; if not given, two and a half bores.',
      ),
    ),
    guide_land: optional(
      quantity(
        'length',
        { min: 1e-3, max: 0.2 },
        '10 mm',
        'Land of the spool on the side of the cam, in the bore with the valve shut; if not given, as long as the end land.',
      ),
    ),
    follower_reach: quantity(
      'length',
      { min: 1e-3, max: 0.2, default: 12e-3 },
      '12 mm',
      'How far the spool stands out of the block towards the cam with the valve shut.',
    ),
    collar_thickness: quantity(
      'length',
      { min: 1e-3, max: 0.05, default: 4e-3 },
      '4 mm',
      'Collar at the other end, which stops the shut spool at the block and carries the spring.',
    ),
    over_travel: quantity(
      'length',
      { min: 1e-4, max: 0.02, default: 1e-3 },
      '1 mm',
      'Way that the collar could go beyond full lift before it meets the stop.',
    ),
  },
);
