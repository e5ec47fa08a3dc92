import { stageRuns } from './stage-runs.ts';

stageRuns('build');
