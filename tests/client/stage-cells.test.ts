import { stageRuns } from './stage-runs.ts';

stageRuns(
  { stage: 'cells', multiplicand: '38', multiplier: '27' },
  (action) => action.do === 'write' && 'line' in action && action.line === 'product',
);
