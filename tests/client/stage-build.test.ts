import { stageRuns } from './stage-runs.ts';

stageRuns(
  { stage: 'build', multiplicand: '304', multiplier: '26' },
  (action) => action.do === 'layTile' && action.edge === 'right',
);
