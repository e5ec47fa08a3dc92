import { stageRuns } from './stage-runs.ts';

stageRuns(
  { stage: 'open', multiplicand: '13', multiplier: '42' },
  (action) => action.do === 'count',
);
