import type { StageRules } from '../judge/stage.ts';
import type { Stage } from '../vocabulary.ts';
import { bars, bars1 } from './bars.ts';
import { build } from './build.ts';
import { cells } from './cells.ts';
import { facts } from './facts.ts';
import { open } from './open.ts';
import { paper } from './paper.ts';
import { record } from './record.ts';
import { walk } from './walk.ts';

const RULES: Readonly<Record<Stage, StageRules>> = {
  walk,
  facts,
  build,
  bars1,
  bars,
  record,
  cells,
  paper,
  open,
};

export function stageRules(stage: Stage): StageRules {
  return RULES[stage];
}
