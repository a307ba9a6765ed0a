/**
 * Results made from formulas instead of a run, for tests of verdict and report: a 40 × 50 mm engine on 4 bar gauge with
 * a leaky piston and a late cut-off. Plausible, and its ledgers add up, but no physics is claimed.
 */
import type { CompressorVerdict } from '../../../src/run/compressor-verdict.ts';
import type { ValveEvents } from '../../../src/parts/valve-gears/valve-gear.ts';
import type { Outcome } from '../../../src/run/outcome.ts';
import type {
  CycleProfile,
  EngineFacts,
  Moisture,
  PassageTotal,
  RunResult,
  SettledCycle,
  StandStill,
  Trace,
} from '../../../src/run/result.ts';

const DEGREE = Math.PI / 180;
const ATMOSPHERE = 101_325;
const SUPPLY = ATMOSPHERE + 4e5;
const bore = 0.04;
const stroke = 0.05;
const rodLength = 0.1;
const meanSpeed = 33;
const swing = 0.06;
const sweptVolume = (Math.PI / 4) * bore ** 2 * stroke;
const clearanceVolume = 6e-6;

const events: ValveEvents = {
  admission: 354 * DEGREE,
  cutOff: 96 * DEGREE,
  release: 158 * DEGREE,
  compression: 318 * DEGREE,
};

const columns = (count: number, value: (i: number) => number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => value(i));
const perDegree = (value: (angle: number) => number): Float64Array => columns(361, (i) => value(i * DEGREE));

function travel(angle: number): number {
  const crank = stroke / 2;
  return (
    crank + rodLength - crank * Math.cos(angle) - Math.sqrt(rodLength ** 2 - (crank * Math.sin(angle)) ** 2)
  );
}

const volume = (angle: number): number => clearanceVolume + (travel(angle) / stroke) * sweptVolume;

const admitted = (angle: number): number =>
  chest(angle) - 0.35e5 * Math.sin(Math.min(Math.PI / 2, angle)) ** 2;
const expanded = (angle: number): number =>
  admitted(events.cutOff) * (volume(events.cutOff) / volume(angle)) ** 1.3;

function released(angle: number): number {
  const back = 1.04 * ATMOSPHERE;
  return back + (expanded(events.release) - back) * Math.exp(-(angle - events.release) / 0.18);
}

function chest(angle: number): number {
  const late = (angle + 6 * DEGREE) % (2 * Math.PI);
  return SUPPLY - 0.12e5 - 0.25e5 * Math.exp(-(((late - 1.2) / 0.55) ** 2));
}

function pressure(angle: number): number {
  const turn = angle % (2 * Math.PI);
  if (turn < events.cutOff) return admitted(turn);
  if (turn < events.release) return expanded(turn);
  if (turn < events.compression) return released(turn);
  if (turn < events.admission)
    return released(events.compression) * (volume(events.compression) / volume(turn)) ** 1.3;
  const rise = (turn - events.admission) / (2 * Math.PI - events.admission);
  const before =
    released(events.compression) * (volume(events.compression) / volume(events.admission)) ** 1.3;
  return before + (admitted(0) - before) * rise;
}

/** Opens and shuts along a half sine. */
function portArea(angle: number, from: number, to: number, largest: number): number {
  const open = (to - from + 2 * Math.PI) % (2 * Math.PI);
  const turned = (angle - from + 4 * Math.PI) % (2 * Math.PI);
  return turned < open ? largest * Math.sin((Math.PI * turned) / open) : 0;
}

const admissionArea = (angle: number): number => portArea(angle, events.admission, events.cutOff, 38e-6);
const exhaustArea = (angle: number): number => portArea(angle, events.release, events.compression, 62e-6);
const speed = (angle: number): number => meanSpeed * (1 + (swing / 2) * Math.sin(angle - 2));

function gasTorque(angle: number): number {
  const step = 1e-4;
  return ((pressure(angle) - ATMOSPHERE) * (volume(angle + step) - volume(angle - step))) / (2 * step);
}

const hose = (angle: number): number => 1.9e-3 + 1.2e-3 * Math.sin(angle - 0.6);
const pastPiston = (angle: number): number => 9e-10 * (pressure(angle) - ATMOSPHERE);

const passageFlows: readonly (Omit<PassageTotal, 'mass'> & { readonly flow: (angle: number) => number })[] = [
  { name: 'hose', role: 'supply', from: 'supply', to: 'valve chest', flow: hose },
  {
    name: 'admission slot',
    role: 'admission',
    from: 'valve chest',
    to: 'cylinder',
    flow: (a) => 110 * admissionArea(a),
  },
  {
    name: 'exhaust slot',
    role: 'exhaust',
    from: 'cylinder',
    to: 'room',
    flow: (a) => 60 * exhaustArea(a),
  },
  { name: 'past the piston', role: 'leak', from: 'cylinder', to: 'room', flow: pastPiston },
  { name: 'across the front face', role: 'leak', from: 'valve chest', to: 'room', flow: () => 1.1e-4 },
  {
    name: 'across the back face',
    role: 'leak',
    from: 'cylinder',
    to: 'room',
    flow: (a) => pastPiston(a) / 9,
  },
];

const profile: CycleProfile = {
  crankAngle: perDegree((angle) => angle),
  time: perDegree((angle) => angle / meanSpeed),
  speed: perDegree(speed),
  chestPressure: perDegree(chest),
  chestTemperature: perDegree(() => 287.4),
  ends: [
    {
      name: 'cylinder',
      deadCentre: 0,
      sweptVolume,
      clearanceVolume,
      volume: perDegree(volume),
      pressure: perDegree(pressure),
      temperature: perDegree((angle) => 288 * (pressure(angle) / SUPPLY) ** 0.12),
      admissionArea: perDegree(admissionArea),
      exhaustArea: perDegree(exhaustArea),
    },
  ],
  gasTorque: perDegree(gasTorque),
  inertiaTorque: perDegree((angle) => 0.11 * Math.sin(2 * angle)),
  frictionTorque: perDegree((angle) => 0.28 + 0.09 * Math.abs(Math.sin(angle))),
  loadTorque: perDegree((angle) => 1.5 * (speed(angle) / meanSpeed) ** 2),
  massFlow: passageFlows.map(({ flow }) => perDegree(flow)),
};

const perTurn = (values: Float64Array): number =>
  values.slice(1).reduce((sum, value) => sum + value, 0) * DEGREE;

function settledCycle(): SettledCycle {
  const indicated = perTurn(profile.gasTorque);
  const friction = perTurn(profile.frictionTorque);
  const period = (2 * Math.PI) / meanSpeed;
  const load = indicated - friction;
  const mass = perTurn(perDegree(hose)) / meanSpeed;
  return {
    speed: meanSpeed,
    period,
    sweptVolume,
    work: {
      indicated,
      bearings: 0.2 * friction,
      piston: 0.5 * friction,
      valveGear: 0.3 * friction,
      load,
      kineticGain: 0,
      wallHeat: 0.4,
    },
    indicatedMeanEffectivePressure: indicated / sweptVolume,
    brakeMeanEffectivePressure: load / sweptVolume,
    brakePower: load / period,
    airMassFlow: mass / period,
    airFlowAnr: mass / period / 1.185,
    air: {
      mass,
      workedShare: 0.693,
      leakShare: 0.21,
      blowThroughShare: 0.012,
      clearanceShare: 0.085,
      leaks: [
        { name: 'past the piston', share: 0.13 },
        { name: 'across the front face', share: 0.06 },
        { name: 'across the back face', share: 0.02 },
      ],
    },
    passages: passageFlows.map(({ flow, ...ends }) => ({
      ...ends,
      mass: perTurn(perDegree(flow)) / meanSpeed,
    })),
    speedFluctuation: swing,
    extremes: [
      {
        place: 'valve chest',
        pressure: { min: 4.64e5, max: 4.89e5 },
        temperature: { min: 285.2, max: 289.1 },
      },
      { place: 'cylinder', pressure: { min: 1.05e5, max: 4.87e5 }, temperature: { min: 236.1, max: 291.4 } },
    ],
    coldestExhaust: 241.6,
    events,
    cutOffFraction: travel(events.cutOff) / stroke,
    profile,
  };
}

const cycle = settledCycle();

const compressor: CompressorVerdict = {
  demandAnr: cycle.airFlowAnr,
  deliveryAnr: 2.5e-3,
  duty: 0.64,
  dutyRating: 0.7,
  keepsUp: true,
};

/** Made up, as all here: 40 g an hour come in, 30 of them drop out. */
const moisture: Moisture = {
  receiverPressure: ATMOSPHERE + 6e5,
  takenIn: 40e-3 / 3600,
  condensed: 30e-3 / 3600,
  carriedOn: 10e-3 / 3600,
  roomDewPoint: 280.4,
  pressureDewPoint: 312.3,
  exhaustDewPoint: 260.2,
};

const engine: EngineFacts = {
  valveGearKind: 'rotary disc',
  gas: {
    name: 'dry air',
    origin: 'room air',
    heatCapacityRatio: 1.4,
    criticalPressureRatio: 0.5283,
  },
  relativeHumidity: 0.6,
  ratedPressure: undefined,
  barrel: { material: undefined, wallThickness: undefined },
  atmosphericPressure: ATMOSPHERE,
  atmosphericTemperature: 288.15,
  supplyPressure: SUPPLY,
  chestVolume: 190e-6,
  clearanceVolume,
  sweptVolume,
  bore,
  stroke,
  rodLength,
  momentOfInertia: 0.021,
  flywheelRim: { radius: 0.11, density: 7200 },
  receiver: { volume: 0.05, pressure: ATMOSPHERE + 8e5 },
  ends: [{ name: 'cylinder', deadCentre: 0, events }],
  events,
  cutOffFraction: travel(events.cutOff) / stroke,
  derivedSizes: [
    {
      label: 'admission slot, between the centres of its round ends',
      value: 84 * DEGREE,
      dimension: 'angle',
    },
    { label: 'smallest land between slot and rim', value: 0.0042, dimension: 'length' },
    { label: 'film in each face', value: 35e-6, dimension: 'length' },
  ],
  loadCurve: {
    speed: columns(21, (i) => 3 * i),
    torque: columns(21, (i) => 1.5 * ((3 * i) / meanSpeed) ** 2),
  },
};

function traceOf(count: number, end: number, speedAt: (time: number) => number): Trace {
  const time = columns(count, (i) => (end * i) / (count - 1));
  let angle = 30 * DEGREE;
  const crankAngle = columns(count, (i) => {
    if (i > 0) angle += ((speedAt(time[i]!) + speedAt(time[i - 1]!)) / 2) * (end / (count - 1));
    return angle;
  });
  return {
    time,
    crankAngle,
    speed: columns(count, (i) => speedAt(time[i]!)),
    chestPressure: columns(count, (i) => SUPPLY - 0.2e5 - (SUPPLY - ATMOSPHERE) * Math.exp(-time[i]! / 0.05)),
    cylinderPressure: columns(count, (i) => pressure(crankAngle[i]!)),
  };
}

const growing = (time: number): number =>
  meanSpeed * (1 - Math.exp(-time / 2.2)) * (1 + (swing / 2) * Math.sin(31 * time));

/** An engine that runs well, with everything a result can carry. */
export const settledResult: RunResult = {
  title: 'Village cider press',
  notes: 'Second build, bronze piston.\nFlywheel from a scrapped mangle.',
  outcome: {
    kind: 'settled',
    reason: 'Every turn is like the one before.',
    time: 14.2,
    crankAngle: 0,
    turns: 63,
  },
  trace: traceOf(2200, 14.2, growing),
  settled: cycle,
  compressor,
  moisture,
  ledger: { mass: 3.1e-9, energy: 4.7e-8 },
  counters: { derivativeCalls: 18_240, acceptedSteps: 1510, turns: 63 },
  engine,
};

/** The same engine on a compressor that is too small. */
export const saggingResult: RunResult = {
  ...settledResult,
  compressor: { ...compressor, deliveryAnr: 0.9e-3, duty: 1, keepsUp: false, minutesUntilSag: 3.4 },
};

function withoutCycle(outcome: Outcome, trace: Trace): RunResult {
  const { settled: _settled, compressor: _compressor, moisture: _moisture, ...rest } = settledResult;
  return { ...rest, outcome, trace, counters: { ...rest.counters, turns: outcome.turns } };
}

/** At rest under nearly the whole supply pressure. */
const tightStandStill: StandStill = {
  chestPressure: engine.supplyPressure - 2e3,
  cylinderPressure: engine.atmosphericPressure,
  airFlowAnr: 0.08e-3,
  leaks: [{ name: 'past the piston', massFlow: 0.1e-3 }],
};

const atRest = (result: RunResult): RunResult => ({ ...result, standStill: tightStandStill });

export const noStartResult = atRest(
  withoutCycle(
    {
      kind: 'no-start',
      reason: 'The crank came to rest before it had got round once.',
      time: 0.9,
      crankAngle: 171 * DEGREE,
      turns: 0,
      missingTorque: 0.42,
    },
    traceOf(180, 0.9, (time) => Math.max(0, 7 * Math.sin(time * 4) * Math.exp(-3 * time))),
  ),
);

/** With two changes tried that do nothing alone and run together; the scenario is written in imperial units. */
export const triedResult: RunResult = {
  ...noStartResult,
  trials: {
    unaidedShareNow: 0,
    slowTurnNow: { torque: 0.35, load: 1.15 },
    running: {
      changes: [
        {
          what: 'more supply pressure',
          settings: [{ path: 'supply.pressure', now: '45 psi gauge', then: '60 psi gauge' }],
          proviso: 'The hose must bear it.',
        },
        {
          what: 'a lighter load',
          settings: [{ path: 'load.torque', now: '2 lbf ft', then: '1.5 lbf ft' }],
        },
      ],
      answer: { speed: 10 * Math.PI, brakePower: 55.3, unaidedShare: 0.125, compressor },
    },
    inVain: [
      {
        change: {
          what: 'more supply pressure',
          settings: [{ path: 'supply.pressure', now: '45 psi gauge', then: '90 psi gauge' }],
        },
        slowTurn: { torque: 0.9, load: 1.15 },
      },
      {
        change: {
          what: 'a lighter load',
          settings: [{ path: 'load.torque', now: '2 lbf ft', then: '1 lbf ft' }],
        },
        slowTurn: { torque: 0.35, load: 0.6 },
      },
    ],
  },
};

export const stalledResult = atRest(
  withoutCycle(
    {
      kind: 'stalled',
      reason: 'The crank came to rest and the air cannot move it on.',
      time: 4.4,
      crankAngle: 338 * DEGREE,
      turns: 9,
      missingTorque: 0.11,
    },
    traceOf(700, 4.4, (time) => Math.max(0, 14 * (1 - Math.exp(-time / 0.4)) * (1 - (time / 4.2) ** 2))),
  ),
);

export const notSettledResult = withoutCycle(
  {
    kind: 'not-settled',
    reason: 'The speed was still changing when the longest time was over.',
    time: 5,
    crankAngle: 12 * DEGREE,
    turns: 20,
  },
  traceOf(900, 5, growing),
);

/** The same engine working on both sides, as if both ends were alike; the crank end goes half a turn later. */
function doubleActing(): RunResult {
  const [cover] = profile.ends;
  const halfTurnLater = (column: Float64Array): Float64Array =>
    column.map((_, i) => column[(i + 180) % 360]!);
  const ends: CycleProfile['ends'] = [
    { ...cover, name: 'cover end' },
    {
      ...cover,
      name: 'crank end',
      deadCentre: Math.PI,
      volume: halfTurnLater(cover.volume),
      pressure: halfTurnLater(cover.pressure),
      temperature: halfTurnLater(cover.temperature),
      admissionArea: halfTurnLater(cover.admissionArea),
      exhaustArea: halfTurnLater(cover.exhaustArea),
    },
  ];
  const [chestExtremes, cylinderExtremes] = cycle.extremes;
  return {
    ...settledResult,
    settled: {
      ...cycle,
      extremes: [chestExtremes!, ...ends.map(({ name }) => ({ ...cylinderExtremes!, place: name }))],
      profile: { ...profile, ends },
    },
    engine: {
      ...engine,
      regulatorInlet: ATMOSPHERE + 9e5,
      ends: [
        { name: 'cover end', deadCentre: 0, events },
        { name: 'crank end', deadCentre: Math.PI, events },
      ],
    },
  };
}

export const doubleActingResult = doubleActing();
