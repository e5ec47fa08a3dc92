import type { StageRules } from '../judge/stage.ts';
import { bars } from './bars.ts';

export const paper: StageRules = { ...bars, id: 'paper' };
