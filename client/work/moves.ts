import type { Move, Stage } from '../../engine/child.ts';
import type { WordId } from '../words/words.ts';

/** The moves of a work as the page offers them; they say where one is and force no order. */
export const TOOLS = ['tiles', 'lay', 'count', 'row', 'slide', 'read'] as const;
export type Tool = (typeof TOOLS)[number];

export const TOOL_WORDS: Record<Tool, WordId> = {
  tiles: 'moveTiles',
  lay: 'moveLay',
  count: 'moveCount',
  row: 'moveRow',
  slide: 'moveSlide',
  read: 'moveRead',
};

/** A stage is a composition: which moves its page offers. Stages are added here, beside the others. */
const STAGE_TOOLS: Partial<Record<Stage, readonly Tool[]>> = {
  bars1: TOOLS,
  bars: TOOLS,
};

export const toolsOf = (stage: Stage): readonly Tool[] => STAGE_TOOLS[stage] ?? [];

/** Which tool serves a move that the engine finds sensible next; null where any may. */
const TOOL_OF: Partial<Record<Move, Tool>> = {
  layTile: 'tiles',
  layBars: 'lay',
  count: 'count',
  makeTen: 'count',
  exchange: 'count',
  sayRow: 'row',
  finishRow: 'row',
  slide: 'slide',
  writeProduct: 'read',
  point: 'read',
  finishProduct: 'read',
  finishProblem: 'read',
};

export const toolFor = (move: Move): Tool | null => TOOL_OF[move] ?? null;
