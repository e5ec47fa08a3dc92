import type { Problem } from '../problem.ts';
import type { RefusalCode } from '../vocabulary.ts';
import type { Action, ActionOf } from './action.ts';
import { count, exchange, layBars, liftBars, makeTen, slide } from './bars.ts';
import type { Desk } from './desk.ts';
import { onSheet, type PaperAction, writtenRows } from './paper.ts';
import type { Lying, Paper, Position } from './position.ts';
import { NO_ACT, paperOf, sheetOf } from './sheet.ts';

/**
 * Physics: the action is done as said, or refused where real material could not do it.
 * Nothing here knows what is right. `undo` belongs to replay.
 */
export function apply(
  problem: Problem,
  position: Position,
  action: Action,
): Position | RefusalCode {
  return applied(problem, position, action, onPaper, NO_ACT);
}

/** The same where the judge works; `act`: which action of the work it is. */
export function applyOnDesk(
  problem: Problem,
  desk: Desk,
  action: Action,
  act: number,
): Desk | RefusalCode {
  return applied(problem, desk, action, onSheet, act);
}

function onPaper(problem: Problem, paper: Paper, action: PaperAction): Paper | RefusalCode {
  const sheet = onSheet(problem, sheetOf(problem.mat, paper), action, NO_ACT);
  return typeof sheet === 'string' ? sheet : paperOf(problem.mat, sheet);
}

function applied<P extends object>(
  problem: Problem,
  position: Lying<P>,
  action: Action,
  written: (problem: Problem, paper: P, action: PaperAction, act: number) => P | RefusalCode,
  act: number,
): Lying<P> | RefusalCode {
  if (position.finished.problem) return 'finished';
  switch (action.do) {
    case 'layTile':
      return layTile(position, action);
    case 'liftTile':
      return liftTile(position, action);
    case 'layBars':
      return layBars(position, action);
    case 'liftBars':
      return liftBars(position, action);
    case 'count':
      return count(position, action);
    case 'makeTen':
      return makeTen(position, action);
    case 'exchange':
      return exchange(position, action);
    case 'slide':
      return slide(position, action);
    case 'begin':
    case 'write':
    case 'rub':
    case 'point': {
      const paper = written(problem, position.paper, action, act);
      if (typeof paper === 'string') return paper;
      const { tiles, piles, said, finished } = position;
      return { tiles, piles, paper, said, finished };
    }
    case 'say':
      return say(problem, position, action);
    case 'finish':
      return finish(problem, position, action);
    case 'check':
    case 'hint':
      return position;
    case 'undo':
      return 'nothingToUndo';
  }
}

/** A tile laid where one lies takes its place. */
function layTile<P>(position: Lying<P>, action: ActionOf<'layTile'>): Lying<P> | RefusalCode {
  if (action.index >= position.tiles[action.edge].length) return 'offTheEdge';
  return withTile(position, action, action.digit);
}

function liftTile<P>(position: Lying<P>, action: ActionOf<'liftTile'>): Lying<P> | RefusalCode {
  const tile = position.tiles[action.edge][action.index];
  if (tile === undefined) return 'offTheEdge';
  return tile === null ? 'nothingThere' : withTile(position, action, null);
}

function withTile<P>(
  { tiles, piles, paper, said, finished }: Lying<P>,
  { edge, index }: { readonly edge: 'bottom' | 'right'; readonly index: number },
  digit: number | null,
): Lying<P> {
  const { bottom, right } = tiles;
  const changed = tiles[edge].slice();
  changed[index] = digit;
  const now = edge === 'bottom' ? { bottom: changed, right } : { bottom, right: changed };
  return { tiles: now, piles, paper, said, finished };
}

function say<P>(
  problem: Problem,
  position: Lying<P>,
  action: ActionOf<'say'>,
): Lying<P> | RefusalCode {
  const { said } = position;
  if ('prompt' in action) {
    if (action.prompt >= problem.prompts.length) return 'noSuchPrompt';
    const prompts = { ...said.prompts, [action.prompt]: action.answer };
    return spoken(position, { rows: said.rows, prompts });
  }
  if (action.row >= position.piles.length) return 'offTheMat';
  const rows = { ...said.rows, [action.row]: action.answer };
  return spoken(position, { rows, prompts: said.prompts });
}

function spoken<P>({ tiles, piles, paper, finished }: Lying<P>, said: Lying<P>['said']): Lying<P> {
  return { tiles, piles, paper, said, finished };
}

function finish<P>(
  problem: Problem,
  position: Lying<P>,
  { what }: ActionOf<'finish'>,
): Lying<P> | RefusalCode {
  const { rows, product } = position.finished;
  if (what === 'problem') return ended(position, { rows, product, problem: true });
  if (problem.stage === 'walk' || problem.stage === 'build') return 'nothingToFinish';
  if (what === 'product') return ended(position, { rows, product: true, problem: false });
  const row = Number(what.slice('row:'.length));
  if (row >= writtenRows(problem)) return 'nothingToFinish';
  if (rows.includes(row)) return position;
  const [below, above] = [rows.filter((each) => each < row), rows.filter((each) => each > row)];
  return ended(position, { rows: [...below, row, ...above], product, problem: false });
}

function ended<P>(
  { tiles, piles, paper, said }: Lying<P>,
  finished: Lying<P>['finished'],
): Lying<P> {
  return { tiles, piles, paper, said, finished };
}
