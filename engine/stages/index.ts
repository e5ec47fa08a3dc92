import type { StageRules } from '../judge/stage.ts';
import type { Stage } from '../vocabulary.ts';
import { bars, bars1 } from './bars.ts';
import { cells } from './cells.ts';
import { paper } from './paper.ts';
import { record } from './record.ts';

const RULES: Readonly<Partial<Record<Stage, StageRules>>> = { bars1, bars, record, cells, paper };

export function stageRules(stage: Stage): StageRules {
  return RULES[stage] ?? bars;
}
