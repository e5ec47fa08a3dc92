import { stageRuns } from './stage-runs.ts';

stageRuns('bars1');
