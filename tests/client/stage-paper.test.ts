import { stageRuns } from './stage-runs.ts';

stageRuns(
  { stage: 'paper', multiplicand: '38', multiplier: '27' },
  (action) => action.do === 'write' && 'line' in action && action.line === 'partial:0',
);
