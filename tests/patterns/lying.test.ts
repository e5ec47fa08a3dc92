import { expect, test } from 'vitest';
import { replay } from '../../engine/index.ts';
import { pileValue } from '../../engine/mat/position.ts';
import { barsOn } from '../../engine/patterns/evidence/lying.ts';
import { walkMat } from '../../engine/patterns/evidence/mat-walk.ts';
import { classWork } from '../bench/class-work.ts';

/** Children in every order, with slips, undos, half-made exchanges and ten-bars made of picked bars. */
const WORKS = classWork(12, 20, 3)
  .map(({ problem, actions }) => replay(problem, actions))
  .filter(({ problem }) => problem.stage === 'bars' || problem.stage === 'record');

test('what the log is read to have left on the mat is what physics left there', () => {
  expect(WORKS.some(({ log }) => log.some(({ action }) => action.do === 'undo'))).toBe(true);
  expect(WORKS.some(({ log }) => log.some(({ action }) => action.do === 'makeTen'))).toBe(true);
  for (const work of WORKS) {
    const { mat } = walkMat(work);
    const { beads, tiles, begun } = mat;
    const { piles, tiles: edges, paper } = work.position;
    for (const [row, line] of piles.entries())
      for (const [column, { bars }] of line.entries())
        expect(barsOn(mat, [row, column])).toEqual(bars);
    expect(beads).toEqual(piles.map((row) => row.map(pileValue)));
    expect([tiles, begun]).toEqual([edges, paper.begun]);
  }
});
