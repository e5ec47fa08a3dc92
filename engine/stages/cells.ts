import type { StageRules } from '../judge/stage.ts';
import { bars } from './bars.ts';

export const cells: StageRules = { ...bars, id: 'cells' };
