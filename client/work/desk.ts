import {
  type Action,
  type HintLevel,
  nextMove,
  type Suggestion,
  type Work,
} from '../../engine/child.ts';
import { words } from '../words/words.ts';
import { leftOff } from './left-off.ts';
import { toolFor } from './moves.ts';
import { pageOf } from './pages.ts';
import { type Sentence, sentence } from './says.ts';
import { nextSentence, openSentence } from './sentence.ts';
import { answerOf, refusal, told } from './told.ts';
import type { At, Desk, Tool, ToolId } from './tool.ts';
import type { Keeping } from './work-store.ts';

const firstUnfinished = (works: readonly Work[]): number => {
  const at = works.findIndex((work) => !work.finished.problem);
  return at < 0 ? works.length - 1 : at;
};

const toolsOf = ({ problem }: Work): readonly Tool[] => pageOf(problem.stage).tools(problem);

export const freshDesk = (problem: number, work: Work): Desk => ({
  ...leftOff(work, toolsOf(work)),
  problem,
  held: null,
  howMany: 1,
  slot: null,
  open: null,
  answer: '',
  spot: null,
  carries: false,
  fact: [0, 0],
  numbers: false,
  hint: null,
  message: null,
  status: '',
});

/** Joins the desk to the store: every press of the page ends in one of these. */
export class DeskController implements At {
  readonly store: Keeping;
  desk: Desk;
  private readonly changed: () => void;
  private suggestion: { readonly work: Work; readonly next: Suggestion | null } | null = null;

  constructor(store: Keeping, changed: () => void) {
    this.store = store;
    this.changed = changed;
    const problem = firstUnfinished(store.works);
    this.desk = freshDesk(problem, store.works[problem]!);
  }

  get work(): Work {
    return this.store.works[this.desk.problem]!;
  }

  get tools(): readonly Tool[] {
    return toolsOf(this.work);
  }

  get tool(): Tool {
    return this.tools.find(({ id }) => id === this.desk.tool)!;
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
    return toolFor(this.tools, this.next);
  }

  get sentence(): Sentence {
    const { message, hint, open } = this.desk;
    if (message !== null || hint !== null) return message ?? hint!.sentence;
    return open === null ? nextSentence(this) : openSentence(this.work, open);
  }

  private get text(): string {
    const { id, values } = this.sentence;
    return words(id, values);
  }

  /** What is changed; heard is its `status`, and the sentence where it is another than `before`. */
  set(change: Partial<Desk>, before = this.text): void {
    const last = this.desk.status;
    this.desk = { ...this.desk, ...change };
    const heard = `${change.status ?? ''} ${this.text === before ? '' : this.text}`.trim();
    // The same words again are heard only if they differ.
    const status = heard === last ? `${heard}\u00a0` : heard || last;
    this.desk = { ...this.desk, status };
    this.changed();
  }

  /** Does an action and says what came of it; false when it was refused. */
  do(action: Action): boolean {
    const before = this.text;
    const refused = this.store.do(this.desk.problem, action);
    if (refused !== null) {
      this.set({ message: refusal(refused) }, '');
      return false;
    }
    const held = this.desk.held?.what === 'bars' ? this.desk.held : null;
    const bounced = this.bounce();
    const message = bounced ? sentence('bounced') : answerOf(this.work, action);
    const status = told(this.work, action);
    this.set({ message, hint: null, held, status }, message === null ? before : '');
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

  choose(tool: ToolId): void {
    const nothing = { held: null, open: null, slot: null, spot: null, carries: false };
    const status = `${words(this.tools.find(({ id }) => id === tool)!.word)}.`;
    this.set({ ...nothing, tool, answer: '', message: null, status });
  }

  /** One more step of help for the same position: asks, then shows where, then how. What helps is fetched when it is first asked for. */
  async help(): Promise<void> {
    const { showHint } = await import('./hints.ts');
    const level = Math.min((this.desk.hint?.level ?? 0) + 1, 3) as HintLevel;
    this.turnToNext();
    const hint = showHint(this, level);
    const step = hint.step === null ? {} : { step: hint.step };
    this.store.do(this.desk.problem, { do: 'hint', level, ...step });
    this.set({ hint, message: null, open: level === 1 ? this.desk.open : null }, '');
  }

  /** Help is about the next move: its question is put, so that the hint and what it is about are seen together. */
  private turnToNext(): void {
    const action = this.next?.action;
    if (action?.do === 'say' && 'prompt' in action)
      this.set({ prompt: action.prompt, tool: this.nextTool?.id ?? this.desk.tool });
  }

  /** From a finished problem to the next one that is not. */
  goOn(): void {
    const problem = firstUnfinished(this.store.works);
    const { numbers } = this.desk;
    this.desk = { ...freshDesk(problem, this.store.works[problem]!), numbers };
    this.changed();
  }
}
