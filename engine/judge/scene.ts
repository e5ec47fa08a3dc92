import type { Action } from '../mat/action.ts';
import type { Desk } from '../mat/desk.ts';
import type { Square } from '../mat/geometry.ts';
import type { Problem } from '../problem.ts';
import type { Skill, Verdict } from '../vocabulary.ts';
import type { Memo } from './memo.ts';
import type { KeptLine } from './paper/line-reading.ts';
import type { RowKept } from './paper/squares.ts';
import type { Step, StepStatus } from './work.ts';

/** The true problem, worked once by plain arithmetic; all indexes count places from `origin`. */
export interface Plan {
  readonly problem: Problem;
  readonly columns: number;
  readonly rows: number;
  /** Digits of multiplicand and multiplier, lowest first. */
  readonly across: readonly number[];
  readonly up: readonly number[];
  /** Digits of the product from `origin` up, and of each row above its placeholders. */
  readonly product: readonly number[];
  /** The squares of the mat, by row × columns + column. */
  readonly squares: readonly Square[];
  /** By square: how a pile is that holds bars of its own pair alone; most piles are so. */
  readonly ownHeaps: readonly Heap[];
  readonly partials: readonly (readonly number[])[];
  /** The same as amounts, placeholders included, in units of 10^origin. */
  readonly trueRows: readonly bigint[];
  readonly steps: readonly Step[];
  readonly indexOf: ReadonlyMap<string, number>;
  /** Index of a step by its kind and its pair, row, or place from the origin; looked up often, so no text is made. */
  readonly tables: Readonly<Record<TableKind, readonly number[]>>;
  /** What each step is of, taken from its id once. */
  readonly scopes: readonly Scope[];
  /** Bit r: row r makes something. */
  readonly making: number;
  /** Steps of the squares, or without squares of the digits of rows, where something is due; which of the two. */
  readonly asked: readonly number[];
  readonly onSquares: boolean;
  /** What is made of the plan alone, for all who work the problem. */
  readonly memo: Memo;
  /** How its steps were last told, by step; changed in place. */
  readonly told: (StepStatus | undefined)[];
}

export type TableKind =
  | 'bottom'
  | 'right'
  | 'laid'
  | 'counted'
  | 'fact'
  | 'where'
  | 'said'
  | 'slid'
  | 'settled'
  | 'read'
  | 'sum'
  | 'row'
  | 'zero';

export interface Scope {
  readonly kind: string;
  /** The row of a step of one row, −1 for others; a tile of the right edge belongs to its row. */
  readonly row: number;
  /** The last number of the id: of most steps a column or a place; −1: it has none. */
  readonly last: number;
}

/** The true problem before its steps are listed. */
export type BarePlan = Omit<
  Plan,
  'steps' | 'indexOf' | 'scopes' | 'tables' | 'making' | 'asked' | 'onSquares' | 'memo' | 'told'
>;

/** One laying (or lifting: negative count) that counts for a pair. */
export interface Lay {
  readonly act: number;
  readonly square: Square;
  readonly kind: number;
  readonly count: number;
  /** 10 where bars for the tens of a fact lie on the square to the left of their pair. */
  readonly weight?: 10;
}

/** What was laid for a pair (indexed by row × columns + column of its square), whatever became of it since. */
export interface Plot {
  readonly lays: readonly Lay[];
  /** Beads laid, in units of the pair's own place. */
  readonly laid: number;
  /** The amount that was right for the tiles of its time. */
  readonly right: number | null;
  readonly counted: 'no' | 'right' | 'wrongly';
  /** The layings as they were when they were last right; kept where a fact lies on two squares. */
  readonly rightLays: readonly Lay[] | undefined;
}

/** Where the bars of a pile came from: travels with the pile. */
export interface Heap {
  /** Pairs whose bars travel here, lowest row first, then from the right. */
  readonly pairs: readonly number[];
  /** Bit r: bars of row r are here, through exchanges too. */
  readonly rows: number;
}

/** What a wrong action changed against the due, until it is paid. */
export interface Debt {
  readonly step: number;
  readonly by: 'count' | 'exchange' | 'slide';
  readonly act: number;
  /** Change of the mat's value, in units of 10^origin. */
  readonly amount: bigint;
  /** Beads that would pay it, by place from `origin`. */
  readonly owed: readonly { readonly at: number; readonly beads: number }[];
  /** The square where it lies. */
  readonly square: Square;
  /** The one row that it belongs to, or −1; `early`: before anything of that row slid or came down on it. */
  readonly row: number;
  readonly early: boolean;
}

/** A half-made exchange: ten-bars taken less ones laid, in all and by the row of the square that was named. */
export interface Half {
  /** The place of `from`, counted from `origin`. */
  readonly place: number;
  readonly left: number;
  readonly byRow: readonly number[];
  readonly from: Square;
  readonly to: Square;
}

export interface Latched {
  readonly given: string | number;
  readonly follows: boolean;
}

export type Latches = readonly (Latched | undefined)[];

/** What was crossed out on a line, by place from the origin, and the action that began it. */
export interface Pens {
  /** Carries that were crossed out after their digit was written. */
  readonly crossed: readonly (CrossedOut | undefined)[];
  readonly begun: number | undefined;
}

export interface CrossedOut {
  readonly act: number;
  readonly given: number;
}

/** What the judge remembers beside the position. Immutable: undo goes back to an earlier one. */
export interface Ledger {
  readonly plots: readonly Plot[];
  readonly heaps: readonly Heap[];
  readonly debts: readonly Debt[];
  /** At most one a place, the lowest first. */
  readonly halves: readonly Half[];
  /** Bit r: something of row r was slid, or something came down on it. */
  readonly disturbed: number;
  readonly readings: Readings;
  readonly onPaper: OnPaper;
}

/** What was right when it was read, said or answered: once right it stays right. */
export interface Readings {
  /** By place from the origin, */
  readonly read: Latches;
  /** by row, */
  readonly said: Latches;
  /** by row, of one that still lacked bars, */
  readonly saidThen: Latches;
  /** by prompt. */
  readonly answered: Latches;
  /** What lay in a row when it was written, by row; kept only beside debts. */
  readonly seen: readonly (bigint | undefined)[];
}

/** The same for what is written. */
export interface OnPaper {
  /** Lines of digits: by row, each way in which it was read, */
  readonly lines: readonly (readonly KeptLine[] | undefined)[];
  /** and for the sum. */
  readonly sumLine: readonly KeptLine[];
  /** By index of the line, those of the rows; */
  readonly pens: readonly (Pens | undefined)[];
  /** those of the product, from `PRODUCT`. */
  readonly sumPens: readonly (Pens | undefined)[];
  /** By row of the mat, how the digits on the squares read when they were last looked at; none: nothing was written. */
  readonly squares: readonly (RowKept | undefined)[];
}

export interface Scene {
  readonly plan: Plan;
  readonly position: Desk;
  readonly ledger: Ledger;
  /** Layings that an answer has charged to a step: act → step index. */
  readonly claims: ReadonlyMap<number, number>;
  /** Steps that an answer has charged. */
  readonly charged: ReadonlySet<number>;
  /** Index of the last action that undo would cancel; −1: none. */
  readonly lastAct: number;
  readonly memo: Memo;
}

/** Which answer is asked for: in mid-work, or at the finish of a row, the product, the problem. */
export type Moment =
  | { readonly at: 'now' }
  | { readonly at: 'row'; readonly row: number }
  | { readonly at: 'product' }
  | { readonly at: 'problem' };

/** `short`: begun and not yet enough; `none`: nothing there to judge yet. Both are missing at a finish. */
export type Grade = 'right' | 'wrong' | 'short' | 'none';

export interface Finding {
  readonly grade: Grade;
  /** The due differed from the true problem's. */
  readonly follows: boolean;
  readonly given: number | string | null;
  readonly due: number | string | null;
  /** It was right for a tile that was changed since. */
  readonly stale?: boolean;
  /** Layings that this finding blames. */
  readonly blames?: readonly number[] | undefined;
  /** The row where the blamed bars lie, if another than the step's. */
  readonly row?: number | undefined;
  readonly skill?: Skill | undefined;
}

/** How every step stands, by its index; worked out only if it is looked at. */
export type Findings = Pick<readonly Finding[], 'at'>;

export interface Remark {
  readonly step: number;
  readonly verdict: Verdict;
  readonly given: number | string | null;
  readonly due: number | string | null;
  readonly skill?: Skill;
}

export interface Noted {
  readonly ledger: Ledger;
  readonly remark?: Remark;
}

/** What the judge makes of one action that physics allowed. */
export type Note<A extends Action = Action> = (
  before: Scene,
  after: Desk,
  action: A,
  act: number,
) => Noted;

export type Notes = { readonly [N in Action['do']]?: Note<Extract<Action, { do: N }>> };

/** One kind of obligation: its steps, what an action does to it, and how it stands. Stages are made of these. */
export interface Aspect {
  readonly steps: (plan: BarePlan) => readonly Step[];
  readonly notes?: Notes;
  /** Fills in the findings of its own steps. */
  readonly assess: (scene: Scene, moment: Moment, findings: Finding[]) => void;
  /** What became right at this finish and stays so. */
  readonly latch?: (scene: Scene, moment: Moment) => Ledger;
}
