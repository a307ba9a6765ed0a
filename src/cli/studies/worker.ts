/** One thread of a study: answers about one batch of engines after another. */
import { parentPort, workerData } from 'node:worker_threads';
import type { SettingText } from '../../index.ts';
import { laboratory, type LaboratoryFiles } from './laboratory.ts';

const answer = laboratory(workerData as LaboratoryFiles);

parentPort?.on('message', (engines: readonly (readonly SettingText[])[]) => {
  parentPort?.postMessage(engines.map(answer));
});
