import type { StageRules } from '../judge/stage.ts';
import { bars } from './bars.ts';

export const record: StageRules = { ...bars, id: 'record' };
