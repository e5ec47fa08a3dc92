import type { Square } from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import type { OpenDeed } from '../mat/open-square.ts';
import type { At } from './tool.ts';

export const openSquare = (at: At, square: Square): void =>
  at.set({ open: square, held: null, message: null });

/** A press (tap, click, Space) on a square or a tile's place means what the chosen move makes of it. */
export const pressCell = (at: At, cell: Cell): void => {
  if (!at.work.finished.problem) at.tool.press(at, cell);
};

/** Bars of one kind are lifted together; where facts are laid they are lifted from the fact that they belong to. */
export const takeAway = (at: At, square: Square, bars: readonly number[]): void => {
  const owner = at.tools.find((tool) => tool.owner)?.owner;
  for (const kind of new Set(bars)) {
    const count = bars.filter((other) => other === kind).length;
    const of = owner?.(at, square, kind) ?? null;
    at.do({ do: 'liftBars', square, kind, count, ...(of === null ? {} : { of }) });
  }
};

const exchangeFrom = (at: At, from: Square, tens: number, to: Square, ones: number) =>
  at.do({ do: 'exchange', from, tens, to, ones });

/** What was done in an opened square becomes actions; "make ten and exchange" is two of them. */
export const doDeed = (at: At, deed: OpenDeed): void => {
  const square = at.desk.open;
  if (square === null) return;
  const left: Square = [square[0], square[1] + 1];
  if (deed.is === 'count') at.do({ do: 'count', square, total: deed.total });
  else if (deed.is === 'takeAway') takeAway(at, square, deed.bars);
  else if (deed.is === 'exchange') exchangeFrom(at, square, deed.tens, left, deed.ones);
  else if (deed.is === 'exchangeAt') exchangeFrom(at, square, 1, deed.to, 1);
  else if (deed.is === 'carryTens')
    at.set({
      open: null,
      tool: 'count',
      held: { what: 'tens', from: square, tens: deed.tens, to: null },
    });
  else {
    const { bars, split } = deed.pick;
    const made = at.do({ do: 'makeTen', square, bars, ...(split === null ? {} : { split }) });
    if (made && deed.exchange) exchangeFrom(at, square, 1, left, 1);
  }
};
