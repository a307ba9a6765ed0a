/** How a study gets its answers: several engines are asked about at once, wherever and in whatever order they are run. */
import type { SettingText } from './aims/aim.ts';
import type { EngineAnswer } from './engine-answer.ts';

/** An engine is its scenario with these values in place of its own. */
export type Ask = (engines: readonly (readonly SettingText[])[]) => Promise<readonly EngineAnswer[]>;
