import { stageRuns } from './stage-runs.ts';

stageRuns(
  { stage: 'facts', multiplicand: '34', multiplier: '27' },
  (action) => action.do === 'layBars' && action.square[1] === 1,
);
