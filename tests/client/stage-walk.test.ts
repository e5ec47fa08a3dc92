import { stageRuns } from './stage-runs.ts';

stageRuns(
  { stage: 'walk', seed: 3, prompts: 4, categories: true },
  (action) => action.do === 'say' && typeof action.answer === 'string',
);
