import { describe, it } from 'vitest';
import { STAGES } from '../../../engine/index.ts';
import { childRuns } from '../child-runs.ts';
import { browsingForFile } from './browsing.ts';
import { type Engine, lacking } from './engines.ts';

/** Every stage worked in one engine; where it is missing, one test that says so in its name. */
export const stagesIn = (engine: Engine): void => {
  const reason = lacking(engine);
  if (reason !== null) {
    it.skip(`every stage in ${engine.name}: ${reason}`);
    return;
  }
  describe(`in ${engine.name}`, () => {
    const browsing = browsingForFile(engine);
    for (const stage of STAGES) childRuns(stage, browsing);
  });
};
