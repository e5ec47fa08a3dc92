import type { Desk } from '../mat/desk.ts';
import { MAT_LIMITS } from '../mat/geometry.ts';
import { AT_THE_PRODUCT, isOver, NOTHING_YET, NOW } from './ledger.ts';
import { kept, recalled, slots } from './memo.ts';
import type { Finding, Moment, Scene } from './scene.ts';
import type { StageRules } from './stage.ts';
import { leaveUnworked } from './unworked.ts';

/** How every step stands, by the index of the step. */
export function findingsOf(stage: StageRules, scene: Scene, moment: Moment): readonly Finding[] {
  const { memo, position, ledger, claims, charged } = scene;
  const { tiles, piles, paper, said, finished } = position;
  // The finish of the product asks for the same as that of the problem.
  const when = moment.at === 'row' ? 2 + moment.row : isOver(moment) ? 1 : 0;
  const slot = FINDINGS + when;
  const { rows } = finished;
  const { size } = charged;
  return (
    recalled(memo, slot, tiles, piles, paper, said, rows, ledger, claims, charged, size) ??
    kept(
      memo,
      slot,
      findingsNow(stage, scene, moment),
      tiles,
      piles,
      paper,
      said,
      rows,
      ledger,
      claims,
      charged,
      size,
    )
  );
}

const FINDINGS = slots(2 + MAT_LIMITS.rows.most);

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
