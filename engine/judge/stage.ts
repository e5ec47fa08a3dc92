import type { Action } from '../mat/action.ts';
import type { Position } from '../mat/position.ts';
import type { Stage } from '../vocabulary.ts';
import { sceneWith } from './ledger.ts';
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
  for (const note of notesFor(aspects, action.do)) {
    const scene =
      noted.ledger === before.ledger ? before : sceneWith(before, before.position, noted.ledger);
    const next = note(scene, after, action, act);
    noted = noted.remark === undefined ? next : { ...noted, ledger: next.ledger };
  }
  return noted;
}

const NOTES = new WeakMap<readonly Aspect[], Map<Action['do'], readonly Note[]>>();

/** The notes that a stage's aspects have for a kind of action, gathered once. */
function notesFor(aspects: readonly Aspect[], name: Action['do']): readonly Note[] {
  const known = NOTES.get(aspects) ?? new Map<Action['do'], readonly Note[]>();
  NOTES.set(aspects, known);
  const notes =
    known.get(name) ?? (aspects.flatMap((each) => each.notes?.[name] ?? []) as readonly Note[]);
  known.set(name, notes);
  return notes;
}
