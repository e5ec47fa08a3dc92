import type { Edge, HintLevel, Slot } from '../vocabulary.ts';
import type { Square } from './geometry.ts';

/** `partial:k` and `carry:k` belong to the k-th row written, `product` and `carry:product` to the sum. */
export type Line = `partial:${number}` | `carry:${number}` | 'product' | 'carry:product';
export type PointOn = 'multiplicand' | 'multiplier' | 'product' | `partial:${number}`;
export type Finishable = `row:${number}` | 'product' | 'problem';

/** What the child did, not what came of it. Places are absolute, tile index 0 is the lowest digit. */
export type Action =
  | { readonly do: 'layTile'; readonly edge: Edge; readonly index: number; readonly digit: number }
  | { readonly do: 'liftTile'; readonly edge: Edge; readonly index: number }
  | {
      readonly do: 'layBars';
      readonly square: Square;
      readonly kind: number;
      readonly count: number;
      readonly of?: Square;
    }
  | {
      readonly do: 'liftBars';
      readonly square: Square;
      readonly kind: number;
      readonly count: number;
      readonly of?: Square;
    }
  | { readonly do: 'count'; readonly square: Square; readonly total: number }
  | {
      readonly do: 'makeTen';
      readonly square: Square;
      readonly bars: readonly number[];
      readonly split?: { readonly kind: number; readonly take: number };
    }
  | {
      readonly do: 'exchange';
      readonly from: Square;
      readonly tens: number;
      readonly to: Square;
      readonly ones: number;
    }
  | { readonly do: 'slide'; readonly from: Square; readonly to: Square }
  | { readonly do: 'begin'; readonly line: Line; readonly row: number }
  | {
      readonly do: 'write';
      readonly line: Line;
      readonly place: number;
      readonly digit: number;
    }
  | {
      readonly do: 'write';
      readonly square: Square;
      readonly slot: Slot;
      readonly digit: number;
      readonly of?: Square;
    }
  | { readonly do: 'rub'; readonly line: Line; readonly place: number }
  | { readonly do: 'rub'; readonly square: Square; readonly slot: Slot }
  | { readonly do: 'point'; readonly on: PointOn; readonly places: number }
  | { readonly do: 'say'; readonly row: number; readonly answer: string }
  | { readonly do: 'say'; readonly prompt: number; readonly answer: string | Square }
  | { readonly do: 'check' }
  | { readonly do: 'hint'; readonly level: HintLevel; readonly step?: string }
  | { readonly do: 'finish'; readonly what: Finishable }
  | { readonly do: 'undo' };

export type ActionOf<N extends Action['do']> = Extract<Action, { do: N }>;
