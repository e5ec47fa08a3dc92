import type { TemplateResult } from 'lit';
import type {
  Action,
  HintLevel,
  Line,
  Problem,
  Slot,
  Square,
  Suggestion,
  Work,
} from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import type { WordId } from '../words/words.ts';
import type { Source } from './drag.ts';
import type { Sentence } from './says.ts';

export type ToolId =
  | 'walk'
  | 'tiles'
  | 'tell'
  | 'lay'
  | 'fact'
  | 'figures'
  | 'count'
  | 'row'
  | 'write'
  | 'slide'
  | 'read'
  | 'sum';

/** What a key did: nothing, something, or something after which the focus goes to another cell. */
export type Outcome = 'unused' | 'used' | Cell;

/** One move of the work: its name, what lies in the tray, and what presses, digits, keys and drops mean while it is chosen. */
export interface Tool {
  readonly id: ToolId;
  readonly word: WordId;
  /** The question of the first hint, and the picture of the move beside it. */
  readonly ask: WordId;
  readonly picture: TemplateResult;
  readonly says: (at: At, next: Suggestion | null, row: number) => Sentence;
  readonly tray: (at: At) => TemplateResult;
  /** A tap, a click or Space on a square or a tile's place. */
  readonly press: (at: At, cell: Cell) => void;
  readonly digit?: (at: At, digit: number) => void;
  readonly point?: (at: At) => void;
  readonly rub?: (at: At) => void;
  /** Something was carried to a cell; `upper`: to its upper left half. */
  readonly drop?: (at: At, source: Source, cell: Cell, upper: boolean) => void;
  /** A key on a cell, before the keys that all moves share. */
  readonly key?: (at: At, cell: Cell, key: string) => Outcome;
  /** Where bars belong to facts: the pair that bars of this kind on this square were laid for. */
  readonly owner?: (at: At, square: Square, kind: number) => Square | null;
  /** Piles can be taken hold of. */
  readonly grabs?: boolean;
  /** Small carried figures can be written. */
  readonly carries?: boolean;
}

/** How a stage is worked: its moves in their order, and whether there is a mat. */
export interface StagePage {
  readonly tools: (problem: Problem) => readonly Tool[];
  readonly mat: boolean;
}

/** Where the pen is: on a line of the paper, or in a corner of a square. */
export type Spot =
  | { readonly line: Line; readonly place: number }
  | { readonly square: Square; readonly slot: Slot };

/** What a hint shows: level 1 asks, 2 marks where, 3 says how. `step` names the obligation that it helps with. */
export interface HintShown {
  readonly level: HintLevel;
  readonly step: string | null;
  readonly sentence: Sentence;
  readonly marks: readonly Cell[];
  /** Where on the paper. */
  readonly spot: Spot | null;
  /** What the move looks like. */
  readonly picture: TemplateResult | null;
}

/** What a child has in the hand after a tap: bars of the tray, a pile of the mat, or tens on their way to be exchanged. */
export type Held =
  | { readonly what: 'bars'; readonly kind: number }
  | { readonly what: 'pile'; readonly from: Square }
  | {
      readonly what: 'tens';
      readonly from: Square;
      readonly tens: number;
      readonly to: Square | null;
    };

type TilePlace = Extract<Cell, { index: number }>;

/** What a page of work remembers beside the work itself; nothing of it is sent or judged. */
export interface Desk {
  readonly problem: number;
  readonly tool: ToolId;
  readonly held: Held | null;
  readonly howMany: number;
  readonly slot: TilePlace | null;
  readonly open: Square | null;
  readonly row: number;
  readonly answer: string;
  readonly spot: Spot | null;
  /** The next digit is a small one: it is carried. */
  readonly carries: boolean;
  /** The pair whose fact is being laid. */
  readonly fact: Square;
  readonly prompt: number;
  readonly numbers: boolean;
  readonly hint: HintShown | null;
  readonly message: Sentence | null;
  readonly status: string;
}

/** The desk as the moves see it: what lies on it, and what can be done there. */
export interface At {
  readonly desk: Desk;
  readonly work: Work;
  readonly next: Suggestion | null;
  readonly tools: readonly Tool[];
  readonly tool: Tool;
  readonly nextTool: Tool | null;
  readonly sentence: Sentence;
  set(change: Partial<Desk>): void;
  /** Does an action and says what came of it; false when it was refused. */
  do(action: Action): boolean;
  choose(tool: ToolId): void;
  help(): Promise<void>;
}
