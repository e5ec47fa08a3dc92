import type { Position } from '../mat/position.ts';
import { NOTHING_YET } from './ledger.ts';
import type { Finding, Moment, Scene } from './scene.ts';
import type { StageRules } from './stage.ts';
import { leaveUnworked } from './unworked.ts';

/** How every step stands, by the index of the step. */
export function findingsOf(stage: StageRules, scene: Scene, moment: Moment): readonly Finding[] {
  const findings: Finding[] = scene.plan.steps.map(() => NOTHING_YET);
  for (const aspect of stage.aspects) aspect.assess(scene, moment, findings);
  leaveUnworked(scene, moment, findings);
  return findings;
}

/** The moment that the position itself is in: the finish that stands, if any. */
export function momentOf({ finished }: Position): Moment {
  if (finished.problem) return { at: 'problem' };
  return finished.product ? { at: 'product' } : { at: 'now' };
}

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
