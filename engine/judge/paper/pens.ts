import type { ActionOf } from '../../mat/action.ts';
import { lineIndex, PRODUCT } from '../../mat/sheet.ts';
import { withPaper } from '../changes.ts';
import { placed } from '../ledger.ts';
import type { Aspect, Ledger, Note, Pens } from '../scene.ts';

const NO_PENS: Pens = { crossed: [], begun: undefined };

/** Of the line with this index. */
export function pensOf({ onPaper }: Ledger, line: number): Pens {
  const { pens, sumPens } = onPaper;
  if (line < 0) return NO_PENS;
  return (line < PRODUCT ? pens[line] : sumPens[line - PRODUCT]) ?? NO_PENS;
}

function withPens(ledger: Ledger, line: number, pens: Pens): Ledger {
  return line < PRODUCT
    ? withPaper(ledger, { pens: placed(ledger.onPaper.pens, line, pens) })
    : withPaper(ledger, { sumPens: placed(ledger.onPaper.sumPens, line - PRODUCT, pens) });
}

const noteBegin: Note<ActionOf<'begin'>> = ({ ledger }, _after, action, act) => {
  const line = lineIndex(action.line);
  const { crossed } = pensOf(ledger, line);
  return { ledger: withPens(ledger, line, { crossed, begun: act }) };
};

/** A carry is rubbed out when it is used up: the digit that it fed was still made with it. */
const noteRub: Note<ActionOf<'rub'>> = ({ ledger, plan, position }, _after, action, act) => {
  if ('square' in action || !action.line.startsWith('carry')) return { ledger };
  const line = lineIndex(action.line);
  const at = action.place - plan.problem.mat.origin;
  const given = position.paper.lines[line]![at]!;
  const { crossed, begun } = pensOf(ledger, line);
  const now = placed(crossed, at, { act, given });
  return { ledger: withPens(ledger, line, { crossed: now, begun }) };
};

/** Remembers what was crossed out and which action began a line: what an answer has charged stays with its step. */
export const pens: Aspect = {
  steps: () => [],
  notes: { begin: noteBegin, rub: noteRub },
  assess: () => {},
};
