import type { Plan, Scene } from '../judge/scene.ts';
import type { SayValue, Suggestion } from '../judge/work.ts';
import type { Action, ActionOf, Line, PointOn } from '../mat/action.ts';
import type { Square } from '../mat/geometry.ts';
import { pileValue } from '../mat/position.ts';
import type { Prompt } from '../problem.ts';
import type { Move, Slot } from '../vocabulary.ts';

type Values = Readonly<Record<string, SayValue>>;

function said(action: Action, key: Move, values: Values): Suggestion {
  return { action, say: { key, values } };
}

function placeAt(plan: Plan, [row, column]: Square): number {
  return plan.problem.mat.origin + row + column;
}

/** `places`: of the digit below and the digit at the side, so that "tenths times hundredths" can be said. */
function placesOf(plan: Plan, [row, column]: Square): readonly [number, number] {
  return [plan.problem.multiplicand.lowest + column, plan.problem.multiplier.lowest + row];
}

export function layTile(plan: Plan, action: ActionOf<'layTile'>): Suggestion {
  const number = action.edge === 'bottom' ? plan.problem.multiplicand : plan.problem.multiplier;
  const { edge, digit } = action;
  return said(action, 'layTile', { edge, digit, place: number.lowest + action.index });
}

export function liftTile(action: ActionOf<'liftTile'>): Suggestion {
  return said(action, 'liftTile', { edge: action.edge });
}

export function layBars({ plan }: Scene, action: ActionOf<'layBars'>): Suggestion {
  const { square, kind, count } = action;
  const places = placesOf(plan, square);
  return said(action, 'layBars', { kind, count, place: placeAt(plan, square), places });
}

export function liftBars({ plan }: Scene, action: ActionOf<'liftBars'>): Suggestion {
  const { square, kind, count } = action;
  return said(action, 'liftBars', { kind, count, place: placeAt(plan, square) });
}

export function countPile({ plan, position }: Scene, square: Square): Suggestion {
  const total = pileValue(position.piles[square[0]]![square[1]]!);
  return said({ do: 'count', square, total }, 'count', { total, place: placeAt(plan, square) });
}

export function exchange({ plan }: Scene, action: ActionOf<'exchange'>): Suggestion {
  const { from, to, tens, ones } = action;
  const values = { tens, ones, place: placeAt(plan, from), next: placeAt(plan, to) };
  return said(action, 'exchange', values);
}

export function slide({ plan }: Scene, from: Square, to: Square): Suggestion {
  const values = { place: placeAt(plan, from), row: from[0] };
  return said({ do: 'slide', from, to }, 'slide', values);
}

export function sayRow(row: number, answer: string): Suggestion {
  return said({ do: 'say', row, answer }, 'sayRow', { row, answer });
}

export function writeDigit(
  action: Extract<Action, { do: 'write'; line: unknown }>,
  key: Move,
): Suggestion {
  const { digit, place, line } = action;
  return said(action, key, { digit, place, line });
}

/** `digit`: of the multiplier, which is touched to begin its row. */
export function beginLine(plan: Plan, action: ActionOf<'begin'>): Suggestion {
  const { row, line } = action;
  const digit = plan.up[row]!;
  const place = plan.problem.multiplier.lowest + row;
  return said(action, 'begin', { row, line, digit, place });
}

interface OnLine {
  readonly line: Line;
  /** −1: the sum. */
  readonly row: number;
  /** Counted from the origin. */
  readonly at: number;
}

export function writeZero(plan: Plan, { line, row, at }: OnLine): Suggestion {
  const place = plan.problem.mat.origin + at;
  return said({ do: 'write', line, place, digit: 0 }, 'writeZero', { row, place, digit: 0 });
}

export function writeCarry(
  plan: Plan,
  { line, row, at, digit }: OnLine & { digit: number },
): Suggestion {
  const place = plan.problem.mat.origin + at;
  return said({ do: 'write', line, place, digit }, 'writeCarry', { row, place, digit });
}

/** A digit and how it comes about: two digits multiplied (with their places) or a column added, and the carry. */
export function writeColumn(
  plan: Plan,
  {
    line,
    row,
    at,
    digit,
    column,
    base,
    carry,
  }: OnLine & {
    digit: number;
    column: number;
    base: number;
    carry: number;
  },
): Suggestion {
  const place = plan.problem.mat.origin + at;
  const action = { do: 'write', line, place, digit } as const;
  const values = { digit, place, carry, total: base + carry };
  if (row < 0) return said(action, 'writeSum', values);
  const across = plan.across[column];
  if (across === undefined) return said(action, 'writePartial', { ...values, row });
  const factors = { across, up: plan.up[row]!, places: placesOf(plan, [row, column]) };
  return said(action, 'writePartial', { ...values, row, ...factors });
}

/** A digit of a fact, with the two digits that make it and their places. */
export function writeSquare(
  plan: Plan,
  action: Extract<Action, { do: 'write'; square: unknown }>,
  pair: Square,
): Suggestion {
  const [across, up] = [plan.across[pair[1]] ?? 0, plan.up[pair[0]] ?? 0];
  const { digit, slot, square } = action;
  const place = placeAt(plan, square);
  const places = placesOf(plan, pair);
  return said(action, 'writeSquare', {
    digit,
    slot,
    place,
    across,
    up,
    total: across * up,
    places,
  });
}

export function rubSquare(
  plan: Plan,
  { square, slot }: { readonly square: Square; readonly slot: Slot },
): Suggestion {
  return said({ do: 'rub', square, slot }, 'rub', { slot, place: placeAt(plan, square) });
}

export function rubDigit(action: Extract<Action, { do: 'rub'; line: unknown }>): Suggestion {
  return said(action, 'rub', { place: action.place, line: action.line });
}

/** `lowest`: places of the last digits of both numbers and of the product, so that the point can be told by them. */
export function setPoint({ problem }: Plan, on: PointOn, places: number): Suggestion {
  const { multiplicand, multiplier, mat } = problem;
  const lowest = [multiplicand.lowest, multiplier.lowest, mat.origin];
  return said({ do: 'point', on, places }, 'point', { on, places, lowest });
}

export function finishRow(row: number): Suggestion {
  return said({ do: 'finish', what: `row:${row}` }, 'finishRow', { row });
}

export function finishProduct(): Suggestion {
  return said({ do: 'finish', what: 'product' }, 'finishProduct', {});
}

export function finishProblem(): Suggestion {
  return said({ do: 'finish', what: 'problem' }, 'finishProblem', {});
}

export function undo(): Suggestion {
  return said({ do: 'undo' }, 'undo', {});
}

/** `ask`: which question; the answer as text, or as a square. */
export function sayPrompt(prompt: number, { ask }: Prompt, answer: string | Square): Suggestion {
  const key = ask === 'number' ? 'sayNumber' : 'sayPrompt';
  const shown = typeof answer === 'string' ? answer : [...answer];
  return said({ do: 'say', prompt, answer }, key, { ask, answer: shown });
}
