import { describe, expect, it } from 'vitest';
import type { Work } from '../../engine/index.ts';
import { play } from './play.ts';

const PROBLEM = { multiplicand: '34', multiplier: '12' };
const lay = (square: [number, number], kind: number, count: number) => ({
  do: 'layBars',
  square,
  kind,
  count,
});
const refusals = (work: Work) => work.log.map(({ refused }) => refused ?? null);
const barsAt = ({ position }: Work, row: number, column: number) =>
  position.piles[row]![column]!.bars;

describe('real material', () => {
  it('gives no ten-bars that are not there', () => {
    const exchange = { do: 'exchange', from: [0, 0], tens: 1, to: [0, 1], ones: 1 };
    const work = play(PROBLEM, [lay([0, 0], 4, 2), exchange]);
    expect(refusals(work)).toEqual([null, 'notEnoughBars']);
    expect(barsAt(work, 0, 1)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
  });

  it.each([
    [[4, 5], undefined, 'notTen'],
    [[4, 7], undefined, 'notTen'],
    [[4, 6], undefined, null],
    [[4, 7], { kind: 7, take: 6 }, null],
    [[4, 7], { kind: 7, take: 5 }, 'notTen'],
  ])('makes a ten of exactly ten beads: %j %j', (bars, split, refused) => {
    const pick = { do: 'makeTen', square: [0, 0], bars, ...(split && { split }) };
    const laid = [4, 5, 6, 7].map((kind) => lay([0, 0], kind, 1));
    expect(refusals(play(PROBLEM, [...laid, pick])).at(-1)).toBe(refused);
  });

  it('leaves the rest of a bar that is split', () => {
    const pick = { do: 'makeTen', square: [0, 0], bars: [4, 7], split: { kind: 7, take: 6 } };
    const work = play(PROBLEM, [lay([0, 0], 4, 1), lay([0, 0], 7, 1), pick]);
    expect(barsAt(work, 0, 0)).toEqual([1, 0, 0, 0, 0, 0, 0, 0, 0, 1]);
  });

  it.each([
    [20, [0, 0, 0, 0, 0, 0, 0, 0, 0, 2]],
    [28, [0, 0, 0, 0, 0, 0, 0, 1, 0, 2]],
    [7, [0, 0, 0, 0, 0, 0, 1, 0, 0, 0]],
  ])('lays what was counted, %i, as ten-bars and one bar', (total, bars) => {
    const work = play(PROBLEM, [lay([0, 0], 7, 4), { do: 'count', square: [0, 0], total }]);
    expect(barsAt(work, 0, 0)).toEqual(bars);
  });

  it('keeps what lay on a square when a pile comes down on it', () => {
    const slide = { do: 'slide', from: [1, 0], to: [0, 1] };
    const work = play(PROBLEM, [lay([1, 0], 4, 1), lay([0, 1], 3, 2), slide]);
    expect(barsAt(work, 0, 1)).toEqual([0, 0, 2, 1, 0, 0, 0, 0, 0, 0]);
    expect(barsAt(work, 1, 0)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 0]);
  });

  it('lies still once the problem is finished', () => {
    const work = play(PROBLEM, [{ do: 'finish', what: 'problem' }, lay([0, 0], 4, 1)]);
    expect(refusals(work)).toEqual([null, 'finished']);
  });
});
