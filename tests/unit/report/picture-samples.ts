/** Small inputs for pictures that need more than one run; invented, and smooth enough to look at. */
import type { ReceiverCourse } from '../../../src/report/pictures/receiver.ts';
import type { Drive, StartMap, StartPosition } from '../../../src/run/drive-result.ts';

const RPM = Math.PI / 30;
const DEGREE = Math.PI / 180;

/** By itself from 20 to 70 degrees, pushed from 80 to 190, the faster the later, and not from elsewhere. */
function startAt(degrees: number): StartPosition {
  const crankAngle = degrees * DEGREE;
  if (degrees >= 20 && degrees < 80) return { crankAngle, startsUnaided: true, push: 0, secondsToSpeed: 4 };
  if (degrees < 80 || degrees >= 200) return { crankAngle, startsUnaided: false };
  return { crankAngle, startsUnaided: false, push: (degrees - 40) * RPM, secondsToSpeed: 6 };
}

const positions = Array.from({ length: 36 }, (_, i) => startAt(10 * i));
export const sampleStarts: StartMap = { positions, unaidedShare: 6 / 36 };

const speed = Float64Array.from({ length: 21 }, (_, i) => (50 + 25 * i) * RPM);
const airMassFlow = speed.map((own) => 1e-5 * own);

/** Crosses at 300 rpm. */
export const sampleDrive: Drive = {
  curve: { speed, torque: speed.map((own) => 3 - 1.2 * (own / (300 * RPM)) ** 2), airMassFlow },
  // Taken no further than to 475 rpm.
  curveWithoutLeaks: {
    speed: speed.slice(0, 18),
    torque: speed.slice(0, 18).map((own) => 3.4 - 1.2 * (own / (300 * RPM)) ** 2),
    airMassFlow: airMassFlow.slice(0, 18),
  },
  load: speed.map((own) => 1.3 + 0.5 * (own / (300 * RPM))),
  stallTorque: 3 - 1.2 / 36,
  operatingPoints: [{ speed: 300 * RPM, stable: true }],
  startMap: sampleStarts,
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
