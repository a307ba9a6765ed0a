/** One thread of a study: answers about a batch of engines. */
import { workerData } from 'node:worker_threads';
import type { EngineAnswer, SettingText } from '../../index.ts';
import { laboratory, type LaboratoryFiles } from './laboratory.ts';

const answer = laboratory(workerData as LaboratoryFiles);

export const answers = (engines: readonly (readonly SettingText[])[]): EngineAnswer[] => engines.map(answer);
