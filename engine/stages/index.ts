import type { StageRules } from '../judge/stage.ts';
import type { Stage } from '../vocabulary.ts';
import { bars, bars1 } from './bars.ts';

const RULES: Readonly<Partial<Record<Stage, StageRules>>> = { bars1, bars };

export function stageRules(stage: Stage): StageRules {
  return RULES[stage] ?? bars;
}
