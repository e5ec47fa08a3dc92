import { stageRuns } from './stage-runs.ts';

stageRuns(
  { stage: 'record', multiplicand: '34', multiplier: '27' },
  (action) => action.do === 'write' && 'line' in action && action.line === 'partial:0',
);
