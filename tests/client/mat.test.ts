import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cellKey, cellOf, squareCell, step, tileCell } from '../../client/mat/cells.ts';
import { downDiagonal, fitMat, nearest } from '../../client/mat/geometry.ts';
import { BETWEEN, barsOf, layPile, ROW } from '../../client/mat/pile-layout.ts';
import { pickOf } from '../../client/mat/ten.ts';

const key = (name: string, ctrlKey = false) => ({
  key: name,
  ctrlKey,
  altKey: false,
  metaKey: false,
});

describe('the size of the mat', () => {
  it('shows all nine columns in a frame of 820 by 600, with squares no smaller than a finger', () => {
    const box = fitMat({ width: 542, height: 310, rows: 4, columns: 9, needed: 5 });
    expect(box.pans).toBe(false);
    expect(box.square).toBeGreaterThanOrEqual(44);
  });

  it('pans on a phone and keeps the columns that the problem needs in view', () => {
    const box = fitMat({ width: 370, height: 420, rows: 4, columns: 9, needed: 5 });
    expect(box.pans).toBe(true);
    expect(5 * box.square).toBeLessThan(370);
    expect(box.square).toBeGreaterThanOrEqual(44);
  });
});

describe('letting go near a square', () => {
  const spots = [
    { target: 'left', left: 0, top: 0, width: 40, height: 40 },
    { target: 'right', left: 44, top: 0, width: 40, height: 40 },
  ];

  it('means the square under the finger', () => {
    expect(nearest(spots, 50, 20, 22)).toBe('right');
  });

  it('means the nearest square when the finger is beside one', () => {
    expect(nearest(spots, 90, 45, 22)).toBe('right');
    expect(nearest(spots, 41, 20, 22)).toBe('left');
  });

  it('means nothing when no square is near', () => {
    expect(nearest(spots, 200, 200, 22)).toBeNull();
  });
});

describe('the diagonal', () => {
  it('leads down and to the left, every square of it of one place', () => {
    expect(downDiagonal([2, 1], 9)).toEqual([
      [1, 2],
      [0, 3],
    ]);
  });

  it('ends at the edge of the mat', () => {
    expect(downDiagonal([3, 8], 9)).toEqual([]);
  });
});

describe('walking by keys', () => {
  const shape = { rows: 4, columns: 9 };

  it('goes to the higher place by the left arrow, up by the up arrow', () => {
    expect(step(squareCell([0, 0]), key('ArrowLeft'), shape)).toEqual(squareCell([0, 1]));
    expect(step(squareCell([0, 0]), key('ArrowUp'), shape)).toEqual(squareCell([1, 0]));
  });

  it('leaves the squares for the places of the tiles, below and at the right', () => {
    expect(step(squareCell([0, 3]), key('ArrowDown'), shape)).toEqual(tileCell('bottom', 3));
    expect(step(squareCell([2, 0]), key('ArrowRight'), shape)).toEqual(tileCell('right', 2));
  });

  it('goes to the corners by Ctrl with Home and End', () => {
    expect(step(squareCell([1, 1]), key('Home', true), shape)).toEqual(squareCell([3, 8]));
    expect(step(squareCell([1, 1]), key('End', true), shape)).toEqual(squareCell([0, 0]));
  });

  it('never leaves the mat, whatever is pressed', () => {
    const names = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End'];
    const walk = fc.array(fc.constantFrom(...names), { maxLength: 60 });
    fc.assert(
      fc.property(walk, (pressed) => {
        let cell = squareCell([0, 0]);
        for (const name of pressed) cell = step(cell, key(name), shape) ?? cell;
        const [row, column] = cell.at === 'square' ? [cell.row, cell.column] : [0, 0];
        const index = cell.at === 'square' ? 0 : cell.index;
        expect(row >= 0 && row < 4 && column >= 0 && column < 9).toBe(true);
        expect(index >= 0 && index < (cell.at === 'right' ? 4 : 9)).toBe(true);
      }),
    );
  });

  it('writes a cell as text and reads it again', () => {
    for (const cell of [squareCell([2, 5]), tileCell('bottom', 7), tileCell('right', 1)])
      expect(cellOf(cellKey(cell))).toEqual(cell);
  });
});

describe('a pile', () => {
  const room = { width: 60, height: 50, most: 12, row: ROW.close, between: BETWEEN.plain };
  const counts = fc.array(fc.nat({ max: 9 }), { minLength: 10, maxLength: 10 });

  it('shows every bar once, longest first', () => {
    expect(barsOf([2, 0, 0, 0, 0, 1, 0, 0, 0, 1])).toEqual([10, 6, 1, 1]);
  });

  it('stays inside its box, however much lies there', () => {
    fc.assert(
      fc.property(counts, (bars) => {
        const { bead, bars: placed } = layPile(bars, room);
        expect(placed.length).toBe(bars.reduce((sum, count) => sum + count, 0));
        for (const { kind, x, y } of placed) {
          expect(x + kind * bead).toBeLessThanOrEqual(room.width + 1e-9);
          expect(y + (bead * room.row) / 2).toBeLessThanOrEqual(room.height + 1e-9);
        }
      }),
    );
  });

  it('lets no two bars lie over each other', () => {
    fc.assert(
      fc.property(counts, (bars) => {
        const { bead, bars: placed } = layPile(bars, room);
        for (const [i, a] of placed.entries())
          for (const b of placed.slice(i + 1)) {
            const beside = a.x + a.kind * bead <= b.x + 1e-9 || b.x + b.kind * bead <= a.x + 1e-9;
            expect(beside || Math.abs(a.y - b.y) >= bead).toBe(true);
          }
      }),
    );
  });
});

describe('a pick of bars', () => {
  it('makes ten when its beads are ten', () => {
    expect(pickOf([6, 4])).toMatchObject({ makesTen: true, split: null });
  });

  it('makes ten with part of the last bar', () => {
    expect(pickOf([6, 7])).toMatchObject({ makesTen: true, split: { kind: 7, take: 4 } });
  });

  it('makes none with too few beads, or when more than the last bar would have to be cut', () => {
    expect(pickOf([6, 3]).makesTen).toBe(false);
    expect(pickOf([6, 7, 5]).makesTen).toBe(false);
  });
});
