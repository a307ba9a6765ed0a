/** A bar with rate and time left on a terminal; nothing in a pipe. */
import { SingleBar } from 'cli-progress';

export interface Progress {
  readonly advance: (done: number) => void;
  readonly end: () => void;
}

const silent: Progress = { advance: () => undefined, end: () => undefined };

const SECONDS_BEFORE_RATE = 1;

function timeLeft(seconds: number): string {
  if (!Number.isFinite(seconds)) return '–';
  if (seconds < 90) return `${Math.ceil(seconds)} s`;
  return seconds < 5400 ? `${Math.ceil(seconds / 60)} min` : `${(seconds / 3600).toFixed(1)} h`;
}

/** `done` engines stood before this began. */
export function progressBar(total: number, done: number, quiet: boolean): Progress {
  if (quiet || !process.stderr.isTTY) return silent;
  const bar = new SingleBar({
    stream: process.stderr,
    format: '{bar} {value} of {total} engines · {rate} · {left} left',
    barCompleteChar: '█',
    barIncompleteChar: '░',
    barsize: 28,
    hideCursor: true,
    clearOnComplete: true,
    stopOnComplete: false,
    linewrap: false,
    fps: 5,
  });
  const begun = performance.now();
  bar.start(total, done, { rate: '–', left: '–' });
  return {
    advance: (now) => {
      const seconds = (performance.now() - begun) / 1000;
      const rate = seconds < SECONDS_BEFORE_RATE ? NaN : (now - done) / seconds;
      const shown = Number.isNaN(rate) ? '–' : `${rate < 10 ? rate.toFixed(1) : rate.toFixed(0)} a second`;
      bar.update(now, { rate: shown, left: timeLeft((total - now) / rate) });
    },
    end: () => bar.stop(),
  };
}
