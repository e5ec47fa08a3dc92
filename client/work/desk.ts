import {
  type Action,
  type HintLevel,
  nextMove,
  type Square,
  type Suggestion,
  type Work,
} from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import { words } from '../words/words.ts';
import { type HintShown, showHint } from './hints.ts';
import { type Tool, toolFor, toolsOf } from './moves.ts';
import { nextSentence, openSentence, type Sentence, sentence } from './sentence.ts';
import { answerOf, refusal, told } from './told.ts';
import type { WorkStore } from './work-store.ts';

/** What a child has in the hand after a tap: bars of the tray, or a pile of the mat. */
export type Held =
  | { readonly what: 'bars'; readonly kind: number }
  | { readonly what: 'pile'; readonly from: Square };

type Slot = Extract<Cell, { index: number }>;

/** What a page of work remembers beside the work itself; nothing of it is sent or judged. */
export interface Desk {
  readonly problem: number;
  readonly tool: Tool;
  readonly held: Held | null;
  readonly howMany: number;
  readonly slot: Slot | null;
  readonly open: Square | null;
  readonly row: number;
  readonly answer: string;
  readonly place: number | null;
  readonly numbers: boolean;
  readonly hint: HintShown | null;
  readonly message: Sentence | null;
  readonly status: string;
}

const firstUnfinished = (works: readonly Work[]): number => {
  const at = works.findIndex((work) => !work.finished.problem);
  return at < 0 ? works.length - 1 : at;
};

const suggestedTool = (work: Work): Tool => {
  const next = nextMove(work);
  return (
    (next === null ? null : toolFor(next.say.key)) ?? toolsOf(work.problem.stage)[0] ?? 'tiles'
  );
};

const freshDesk = (problem: number, work: Work): Desk => ({
  problem,
  tool: suggestedTool(work),
  held: null,
  howMany: 1,
  slot: null,
  open: null,
  row: 0,
  answer: '',
  place: null,
  numbers: false,
  hint: null,
  message: null,
  status: '',
});

/** Joins the desk to the store: every press of the page ends in one of these. */
export class DeskController {
  readonly store: WorkStore;
  desk: Desk;
  private readonly changed: () => void;
  private suggestion: { readonly work: Work; readonly next: Suggestion | null } | null = null;

  constructor(store: WorkStore, changed: () => void) {
    this.store = store;
    this.changed = changed;
    const problem = firstUnfinished(store.works);
    this.desk = freshDesk(problem, store.works[problem]!);
  }

  get work(): Work {
    return this.store.works[this.desk.problem]!;
  }

  /** Found once for each position. */
  get next(): Suggestion | null {
    if (this.suggestion?.work !== this.work)
      this.suggestion = { work: this.work, next: nextMove(this.work) };
    return this.suggestion?.next ?? null;
  }

  /** Null while something is to be mended: then the child looks first. */
  get nextTool(): Tool | null {
    if (this.next === null || this.work.lifted.length > 0) return null;
    return toolFor(this.next.say.key);
  }

  get sentence(): Sentence {
    const { message, hint, open, tool } = this.desk;
    if (message !== null || hint !== null) return message ?? hint!.sentence;
    return open === null ? nextSentence(this.work, this.next, tool) : openSentence(this.work, open);
  }

  set(change: Partial<Desk>): void {
    this.desk = { ...this.desk, ...change };
    this.changed();
  }

  /** Does an action and says what came of it; false when it was refused. */
  do(action: Action): boolean {
    const before = this.sentence.id;
    const refused = this.store.do(this.desk.problem, action);
    if (refused !== null) {
      const message = refusal(refused);
      this.set({ message, status: words(message.id, message.values) });
      return false;
    }
    const held = this.desk.held?.what === 'pile' ? null : this.desk.held;
    const bounced = this.bounce();
    const message = bounced ? sentence('bounced') : answerOf(this.work, action);
    this.desk = { ...this.desk, message, hint: null, held };
    const { id, values } = this.sentence;
    const now = id === before && action.do !== 'check' ? '' : words(id, values);
    this.set({ status: `${told(this.work, action)} ${now}` });
    return true;
  }

  /** Where the teacher wants it so, a wrong move is taken back at once; it stays in the record. */
  private bounce(): boolean {
    const { problem, log, judgements } = this.work;
    const last = judgements.at(-1);
    const wrong = last?.verdict === 'wrong' && last.action === log.length - 1;
    if (!problem.policy.bounce || !wrong) return false;
    return this.store.do(this.desk.problem, { do: 'undo' }) === null;
  }

  choose(tool: Tool): void {
    this.set({ tool, held: null, open: null, slot: null, place: null, answer: '', message: null });
  }

  /** One more step of help for the same position: asks, then shows where, then how. */
  help(): void {
    const level = Math.min((this.desk.hint?.level ?? 0) + 1, 3) as HintLevel;
    const hint = showHint(this.work, level, this.next);
    const step = hint.step === null ? {} : { step: hint.step };
    this.store.do(this.desk.problem, { do: 'hint', level, ...step });
    const status = words(hint.sentence.id, hint.sentence.values);
    this.set({ hint, status, message: null, open: level === 1 ? this.desk.open : null });
  }

  /** From a finished problem to the next one that is not. */
  goOn(): void {
    const problem = firstUnfinished(this.store.works);
    const { numbers } = this.desk;
    this.desk = { ...freshDesk(problem, this.store.works[problem]!), numbers };
    this.changed();
  }
}
