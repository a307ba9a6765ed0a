/** Engines whose answers are formulas, for studies that need no air. */
import type { SettingText } from '../../../src/study/aims/aim.ts';
import type { Ask } from '../../../src/study/ask.ts';
import type { EngineAnswer } from '../../../src/study/engine-answer.ts';
import type { Measured } from '../../../src/study/measures.ts';

export const settled = (values: Measured): EngineAnswer => ({
  outcome: 'settled',
  reason: 'It settles.',
  values,
});

export const stalled: EngineAnswer = { outcome: 'stalled', reason: 'It stops.', values: {} };

/** The number that a path is set to. */
export const numberAt = (settings: readonly SettingText[], path: string): number =>
  Number.parseFloat(settings.find((own) => own.path === path)?.value ?? 'NaN');

export interface Fake {
  readonly ask: Ask;
  readonly asked: (readonly SettingText[])[];
}

export function fake(answer: (settings: readonly SettingText[]) => EngineAnswer): Fake {
  const asked: (readonly SettingText[])[] = [];
  return {
    asked,
    ask: (engines) => {
      asked.push(...engines);
      return Promise.resolve(engines.map(answer));
    },
  };
}
