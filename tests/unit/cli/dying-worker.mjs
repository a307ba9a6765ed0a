/** Answers with the number it is asked about; dies of 7 at once, and of 13 by an error nobody catches. */

import { parentPort } from 'node:worker_threads';

parentPort?.on('message', (/** @type {readonly (readonly [{ readonly value: string }])[]} */ engines) => {
  const answers = engines.map(([{ value }]) => {
    if (value === '7') process.exit(3);
    if (value === '13') throw new Error('unlucky');
    return { outcome: 'settled', reason: 'It settles.', values: { speed: Number(value) } };
  });
  parentPort?.postMessage(answers);
});
