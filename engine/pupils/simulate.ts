import { CATALOGUE } from '../patterns/catalogue/index.ts';
import { designedProblems, setFor, undesignedProblems } from '../patterns/design/designed.ts';
import { fail, ok, type Result } from '../result.ts';
import type { Stage } from '../vocabulary.ts';
import { type Figures, figuresOf } from './figures.ts';
import { eligibleVariants, measure } from './measure.ts';
import { canPlay } from './play.ts';

/** `slip`: chance that a step's digit is replaced by another, 0..1. */
export interface Simulation {
  readonly seed: number;
  readonly pupils: number;
  readonly problems: number;
  readonly slip: number;
  readonly stage: Stage;
  readonly set: 'designed' | 'random';
}

export interface Simulated extends Figures {
  readonly stage: Stage;
  readonly set: Simulation['set'];
  /** Part of the stage's patterns that three steps in two of the problems could show, 0..1. */
  readonly eligible: number;
  readonly notEligible: readonly string[];
  readonly problems: readonly (readonly [multiplicand: string, multiplier: string])[];
  /** Pairs of patterns that nothing done at the stage tells apart. */
  readonly inseparable: readonly (readonly [string, string])[];
}

/**
 * Synthetic pupils work the same problems, their work is explained, and what is reported is held
 * against what they hold. Reproducible from the seed. Faults: `notPlayable` at `stage` (no pupil plays it),
 * `nothingShows` at `problems` (too few for any pattern to show in them).
 */
export function simulate(simulation: Simulation): Result<Simulated> {
  const { stage, set, seed } = simulation;
  if (!canPlay(stage)) return fail('notPlayable', 'stage');
  const problems =
    set === 'designed'
      ? designedProblems(stage, simulation.problems)
      : undesignedProblems(stage, simulation.problems, seed);
  const shown = new Set(eligibleVariants(problems).map(({ pattern }) => pattern.id));
  if (shown.size === 0) return fail('nothingShows', 'problems');
  const ofStage = CATALOGUE.filter(({ stages }) => stages.includes(stage));
  const notEligible = ofStage.filter(({ id }) => !shown.has(id)).map(({ id }) => id);
  const { inseparable } = setFor(stage);
  return ok({
    stage,
    set,
    ...figuresOf(measure(problems, simulation), inseparable),
    eligible: shown.size / ofStage.length,
    notEligible,
    problems: problems.map(({ multiplicand, multiplier }) => [multiplicand.text, multiplier.text]),
    inseparable,
  });
}
