import type { Action } from '../mat/action.ts';
import type { Desk } from '../mat/desk.ts';
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
  notes: readonly Note[],
  before: Scene,
  after: Desk,
  action: Action,
  act: number,
): Noted {
  if (notes.length === 1) return notes[0]!(before, after, action, act);
  let { ledger } = before;
  let remark: Noted['remark'];
  for (let index = 0; index < notes.length; index += 1) {
    const scene = ledger === before.ledger ? before : sceneWith(before, before.position, ledger);
    const noted = notes[index]!(scene, after, action, act);
    ledger = noted.ledger;
    remark ??= noted.remark;
  }
  return remark === undefined ? { ledger } : { ledger, remark };
}

export type NotesByName = ReadonlyMap<Action['do'], readonly Note[]>;

/** The notes that a stage's aspects have for each kind of action, aspect after aspect. */
export function notesOf({ aspects }: StageRules): NotesByName {
  const notes = new Map<Action['do'], Note[]>();
  for (const aspect of aspects)
    for (const [name, note] of Object.entries(aspect.notes ?? {})) {
      const all = notes.get(name as Action['do']) ?? [];
      notes.set(name as Action['do'], [...all, note as Note]);
    }
  return notes;
}
