/** Small inputs for pictures that need more than one run; invented, and smooth enough to look at. */
import type { ReceiverCourse } from '../../../src/report/pictures/receiver.ts';
import type { StartFate, TriedStart } from '../../../src/report/pictures/start-map.ts';
import type { TorqueSpeed } from '../../../src/report/pictures/torque-speed.ts';

const RPM = Math.PI / 30;
const DEGREE = Math.PI / 180;

function fateAt(degrees: number): StartFate {
  if (degrees >= 20 && degrees < 80) return 'runs';
  if (degrees >= 80 && degrees < 110) return 'stops';
  return degrees >= 300 && degrees < 350 ? 'backwards' : 'stays';
}

/** Every ten degrees: runs from 20 to 70, stops from 80 to 100, backwards from 300 to 340, does not move elsewhere. */
export const triedStarts: readonly TriedStart[] = Array.from({ length: 36 }, (_, i) => ({
  crankAngle: 10 * i * DEGREE,
  fate: fateAt(10 * i),
}));

const speeds = Float64Array.from({ length: 21 }, (_, i) => (50 + 25 * i) * RPM);

/** Crosses at 300 rpm. */
export const torqueSpeed: TorqueSpeed = {
  speed: speeds,
  engine: speeds.map((speed) => 3 - 1.2 * (speed / (300 * RPM)) ** 2),
  load: speeds.map((speed) => 1.3 + 0.5 * (speed / (300 * RPM))),
  settled: 300 * RPM,
};

const seconds = Float64Array.from({ length: 601 }, (_, i) => 2 * i);
/** A compressor that comes in after five minutes and goes out after twelve. */
const running = seconds.map((time) => (time >= 300 && time < 720 ? 1 : 0));
const receiver = seconds.map((time) => {
  if (time < 300) return 9e5 - 2e5 * (time / 300);
  return time < 720 ? 7e5 + 2e5 * ((time - 300) / 420) : 9e5 - 2e5 * ((time - 720) / 300);
});

export const receiverCourse: ReceiverCourse = {
  time: seconds,
  receiverPressure: receiver,
  supplyPressure: receiver.map((pressure) => 4e5 - 0.02 * (9e5 - pressure)),
  speed: receiver.map((pressure) => (300 - (9e5 - pressure) / 4e4) * RPM),
  compressorOn: running,
  atmosphericPressure: 101_325,
};
