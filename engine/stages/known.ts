import type { StageRules } from '../judge/stage.ts';
import type { Stage } from '../vocabulary.ts';

/** The stages that this program has: filled while it loads, never changed by any work. */
const KNOWN: Partial<Record<Stage, StageRules>> = {};

export function know(...stages: readonly StageRules[]): void {
  for (const rules of stages) KNOWN[rules.id] = rules;
}

export function stageRules(stage: Stage): StageRules {
  const rules = KNOWN[stage];
  if (rules === undefined) throw new Error(`the stage ${stage} was not loaded`);
  return rules;
}
