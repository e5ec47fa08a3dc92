import type { Action, Stage, WrittenProblem } from '../../engine/index.ts';

export interface StageCase {
  readonly written: WrittenProblem;
  /** Picks the action of the presentation that is done wrongly once. */
  readonly slip: (action: Action) => boolean;
}

const counts = (action: Action): boolean => action.do === 'count';

const writes =
  (line: string) =>
  (action: Action): boolean =>
    action.do === 'write' && 'line' in action && action.line === line;

/** One small problem of every stage, for whole runs through its page. */
export const STAGE_CASES: Readonly<Record<Stage, StageCase>> = {
  walk: {
    written: { stage: 'walk', seed: 3, prompts: 4, categories: true },
    slip: (action) => action.do === 'say' && typeof action.answer === 'string',
  },
  build: {
    written: { stage: 'build', multiplicand: '304', multiplier: '26' },
    slip: (action) => action.do === 'layTile' && action.edge === 'right',
  },
  bars1: { written: { stage: 'bars1', multiplicand: '34', multiplier: '7' }, slip: counts },
  bars: { written: { stage: 'bars', multiplicand: '13', multiplier: '14' }, slip: counts },
  facts: {
    written: { stage: 'facts', multiplicand: '34', multiplier: '27' },
    slip: (action) => action.do === 'layBars' && action.square[1] === 1,
  },
  record: {
    written: { stage: 'record', multiplicand: '17', multiplier: '14' },
    slip: writes('partial:0'),
  },
  cells: {
    written: { stage: 'cells', multiplicand: '17', multiplier: '14' },
    slip: writes('product'),
  },
  paper: {
    written: { stage: 'paper', multiplicand: '17', multiplier: '14' },
    slip: writes('partial:0'),
  },
  open: { written: { stage: 'open', multiplicand: '13', multiplier: '42' }, slip: counts },
};
