import type { Line } from '../../engine/child.ts';
import type { PaperSpot } from '../mat/paper.ts';
import { words } from '../words/words.ts';
import { rubDigit, setPoint, writeDigit } from './pens.ts';
import type { At, ToolId } from './tool.ts';

const WRITERS: Readonly<Record<'product' | 'row', readonly ToolId[]>> = {
  product: ['read', 'sum'],
  row: ['write'],
};

/** A line is written in the move that is for it, whatever move was chosen before. */
const writerOf = (at: At, line: Line): ToolId => {
  const writers = WRITERS[line === 'product' ? 'product' : 'row'];
  return at.tools.find(({ id }) => writers.includes(id))?.id ?? at.desk.tool;
};

/** A press on a place of the paper: the pen goes there. */
export const pressLine = (at: At, spot: PaperSpot): void => {
  const row = at.work.position.paper.begun[spot.line] ?? at.desk.row;
  at.set({ tool: writerOf(at, spot.line), spot, row, message: null, slot: null });
};

/** A key on a place of the paper; `on`: the focus goes where the pen went. */
export const lineKey = (
  at: At,
  spot: PaperSpot,
  event: KeyboardEvent,
): 'unused' | 'used' | 'on' => {
  if (event.ctrlKey || event.metaKey || event.altKey || at.work.finished.problem) return 'unused';
  const { carries } = at.desk;
  const there = () => {
    pressLine(at, spot);
    at.set({ carries });
  };
  if (/^\d$/.test(event.key)) {
    there();
    writeDigit(at, Number(event.key));
    return 'on';
  }
  if (event.key === 'Backspace' || event.key === 'Delete') {
    there();
    rubDigit(at);
  } else if (event.key === '+' && at.tool.carries) {
    there();
    at.set({ carries: !carries, status: words(carries ? 'digits' : 'carry') });
  } else if (event.key === '.' || event.key === ',') {
    there();
    setPoint(at);
  } else return 'unused';
  return 'used';
};
