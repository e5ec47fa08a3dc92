import type { Desk } from '../mat/desk.ts';
import { MAT_LIMITS } from '../mat/geometry.ts';
import { NOTHING_YET } from './ledger.ts';
import { remembered, slots } from './memo.ts';
import type { Finding, Moment, Scene } from './scene.ts';
import type { StageRules } from './stage.ts';
import { leaveUnworked } from './unworked.ts';

/** How every step stands, by the index of the step. */
export function findingsOf(stage: StageRules, scene: Scene, moment: Moment): readonly Finding[] {
  const { memo, position, ledger, claims, charged } = scene;
  return remembered(
    memo,
    FINDINGS + (moment.at === 'row' ? 3 + moment.row : WHEN[moment.at]),
    () => findingsNow(stage, scene, moment),
    position,
    ledger,
    claims,
    charged,
    charged.size,
  );
}

const WHEN = { now: 0, product: 1, problem: 2 } as const;
const FINDINGS = slots(3 + MAT_LIMITS.rows.most);

function findingsNow(stage: StageRules, scene: Scene, moment: Moment): readonly Finding[] {
  const findings = new Array<Finding>(scene.plan.steps.length).fill(NOTHING_YET);
  for (let index = 0; index < stage.aspects.length; index += 1)
    stage.aspects[index]!.assess(scene, moment, findings);
  leaveUnworked(scene, moment, findings);
  return findings;
}

/** The moment that the position itself is in: the finish that stands, if any. */
export function momentOf({ finished }: Desk): Moment {
  if (finished.problem) return AT_THE_END;
  return finished.product ? AT_THE_PRODUCT : NOW;
}

export const NOW: Moment = { at: 'now' };
const AT_THE_PRODUCT: Moment = { at: 'product' };
const AT_THE_END: Moment = { at: 'problem' };

const WITH_ROW = ['laid', 'counted', 'said', 'fact', 'where', 'row', 'zero'];
const SO_FAR = ['tile:bottom', 'tile:right', 'settled', 'slid'];
const MISSING_AT_ROW = ['laid', 'fact', 'where', 'row', 'zero', 'tile:right'];

/** Whether an answer at this moment charges the step: what is wrong, and at a finish what is missing. */
export function charges({ plan }: Scene, step: number, found: Finding, moment: Moment): boolean {
  if (found.grade === 'right') return false;
  const wrong = found.grade === 'wrong';
  if (!wrong && (moment.at === 'now' || found.due === null)) return false;
  if (moment.at !== 'row') return true;
  const { kind, row } = plan.scopes[step]!;
  const here = row === moment.row || found.row === moment.row;
  if (wrong) return SO_FAR.includes(kind) || (here && WITH_ROW.includes(kind));
  return kind === 'tile:bottom' || (here && MISSING_AT_ROW.includes(kind));
}
