import type { Action } from '../mat/action.ts';
import type { Position } from '../mat/position.ts';
import type { Stage } from '../vocabulary.ts';
import type { Aspect, Findings, Note, Noted, Scene } from './scene.ts';
import type { Suggestion } from './work.ts';

/** What a stage file gives: what it obliges to, and the next sensible action from any position. */
export interface StageRules {
  readonly id: Stage;
  readonly aspects: readonly Aspect[];
  /** null: nothing is left to do but to finish the problem. */
  readonly next: (scene: Scene, findings: Findings) => Suggestion | null;
}

/** What the stage's aspects make of an action, one after the other; the first remark stands. */
export function noteAction(
  { aspects }: StageRules,
  before: Scene,
  after: Position,
  action: Action,
  act: number,
): Noted {
  let noted: Noted = { ledger: before.ledger };
  for (const { notes } of aspects) {
    const note = notes?.[action.do] as Note | undefined;
    if (note === undefined) continue;
    const next = note({ ...before, ledger: noted.ledger }, after, action, act);
    noted = noted.remark === undefined ? next : { ...noted, ledger: next.ledger };
  }
  return noted;
}
