import type { Aspect } from '../judge/scene.ts';
import type { StageRules } from '../judge/stage.ts';
import { bars } from './bars.ts';

/** Without numbers there is nothing to be right or wrong about. */
function whereNumbers(aspect: Aspect): Aspect {
  return {
    ...aspect,
    steps: (plan) => (plan.up.length === 0 ? [] : aspect.steps(plan)),
    assess: (scene, moment, findings) => {
      if (scene.plan.up.length > 0) aspect.assess(scene, moment, findings);
    },
    latch: (scene, moment) =>
      scene.plan.up.length === 0 ? scene.ledger : (aspect.latch?.(scene, moment) ?? scene.ledger),
  };
}

/** A free mat; with numbers it is judged as bars are, and only when it is asked. */
export const open: StageRules = {
  id: 'open',
  aspects: bars.aspects.map(whereNumbers),
  next: (scene, findings) => (scene.plan.up.length === 0 ? null : bars.next(scene, findings)),
};
