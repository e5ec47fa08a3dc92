import { pileValue } from '../mat/position.ts';
import { textOf } from '../numerals/numeral.ts';
import type { Problem } from '../problem.ts';
import type { Beliefs } from './beliefs.ts';
import type { Hand } from './hand.ts';
import { digitsRead, doOn, type OwnMat, ownMat, settleRow, slideAll } from './mat.ts';
import { barsOfRow } from './pairs.ts';
import { playPoint, shiftOf, writeLine } from './paper.ts';
import { digitsOn, playTiles, type Tiles } from './tiles.ts';

/** Bars on the mat as the beliefs have it; each row is said, or at stage `record` written. */
export function playBars(problem: Problem, beliefs: Beliefs, hand: Hand): void {
  const mat = ownMat(problem, beliefs, hand);
  const tiles = playTiles(problem, beliefs, hand);
  const order = problem.multiplier.digits.map((_, row) => row);
  if (hand.habits.rows === 'topFirst') order.reverse();
  let lines = 0;
  for (const row of order) {
    layRow(mat, tiles, row);
    settleRow(mat, row, false);
    const piles = beadsOf(mat, row);
    if (piles.some((beads) => beads > 0)) {
      reportRow(mat, tiles, { row, piles, line: lines });
      lines += 1;
    }
    doOn(mat, { do: 'finish', what: `row:${row}` });
  }
  slideAll(mat);
  settleRow(mat, 0, true);
  const digits = digitsRead(beliefs, beadsOf(mat, 0), 'product');
  const made = { digits, notes: [], handed: [] };
  writeLine(problem, hand, made, { line: 'product', carries: 'carry:product', shift: 0 });
  playPoint(problem, beliefs, hand);
  hand.act({ do: 'finish', what: 'product' });
  hand.act({ do: 'finish', what: 'problem' });
}

function layRow(mat: OwnMat, tiles: Tiles, row: number): void {
  for (const { square, bars } of barsOfRow(mat.problem.mat, mat.beliefs, tiles, row))
    for (const { kind, count } of bars) {
      const laid = mat.hand.digit(kind);
      if (laid > 0 && count > 0) doOn(mat, { do: 'layBars', square, kind: laid, count });
    }
}

function beadsOf({ position }: OwnMat, row: number): number[] {
  return position.piles[row]!.map(pileValue);
}

interface RowReport {
  readonly row: number;
  readonly piles: readonly number[];
  readonly line: number;
}

function reportRow(mat: OwnMat, tiles: Tiles, { row, piles, line }: RowReport): void {
  const { problem, beliefs, hand } = mat;
  const digits = digitsRead(beliefs, piles, row);
  const [across, up] = [digitsOn(tiles.bottom), digitsOn(tiles.right)];
  const shift = shiftOf(beliefs, { row, across, up, length: digits.length, first: 0 });
  if (problem.stage !== 'record') {
    const [lowest, ...rest] = digits;
    const said = [hand.digit(lowest ?? 0), ...rest];
    doOn(mat, { do: 'say', row, answer: rowText(problem, said, shift) });
    return;
  }
  if (problem.multiplier.digits.length === 1) return;
  hand.act({ do: 'begin', line: `partial:${line}`, row });
  const zeros = hand.habits.placeholders === 'written' ? shift : 0;
  const all = {
    digits: [...Array.from({ length: zeros }, () => 0), ...digits],
    notes: [],
    handed: [],
  };
  const at = { line: `partial:${line}`, carries: `carry:${line}`, shift: shift - zeros } as const;
  writeLine(problem, hand, all, at);
}

/** A row's amount as it is said: its placeholder zeros at the end. */
export function rowText({ mat }: Problem, digits: readonly number[], shift: number): string {
  const all = [...Array.from({ length: shift }, () => 0), ...digits];
  const text = textOf(all, mat.origin);
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}
