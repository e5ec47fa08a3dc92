import type { Suggestion, Work } from '../../engine/child.ts';
import type { PaperView } from '../mat/paper.ts';
import type { MatView } from '../mat/view.ts';
import { showHint } from '../work/hints.ts';
import { toolFor } from '../work/moves.ts';
import { pageOf } from '../work/pages.ts';
import { sentence } from '../work/says.ts';
import type { At, Desk, HintShown, Tool } from '../work/tool.ts';
import { matViewOf, paperViewOf } from '../work/view-of.ts';

/** What is to be seen of one position: the mat where the stage has one, the paper where there is one. */
interface Scene {
  readonly mat: MatView | null;
  readonly paper: PaperView | null;
}

const promptOf = (move: Suggestion | null): number => {
  const action = move?.action;
  return action?.do === 'say' && 'prompt' in action ? action.prompt : 0;
};

/** A desk on which nobody has anything in the hand. */
const deskFor = (tool: Tool, move: Suggestion | null, hint: HintShown | null): Desk => ({
  problem: 0,
  tool: tool.id,
  held: null,
  howMany: 1,
  slot: null,
  open: null,
  row: -1,
  answer: '',
  spot: null,
  carries: false,
  fact: [-1, -1],
  prompt: promptOf(move),
  numbers: false,
  hint,
  message: null,
  status: '',
});

/** Where a move happens is where its fullest hint points. */
const placeOfMove = (
  before: Work,
  move: Suggestion,
  tools: readonly Tool[],
  tool: Tool,
): HintShown => {
  const at: At = {
    desk: deskFor(tool, move, null),
    work: before,
    next: move,
    tools,
    tool,
    nextTool: tool,
    sentence: sentence('howDone'),
    set: () => undefined,
    do: () => false,
    choose: () => undefined,
    help: async () => undefined,
  };
  return showHint(at, 3);
};

/** The position after a move, with the place of the move marked; `move` null: before the first. */
export const sceneOf = (before: Work, after: Work, move: Suggestion | null): Scene => {
  const page = pageOf(after.problem.stage);
  const tools = page.tools(after.problem);
  const tool = (move === null ? null : toolFor(tools, move)) ?? tools[0]!;
  const hint = move === null ? null : placeOfMove(before, move, tools, tool);
  const desk = deskFor(tool, move, hint);
  return {
    mat: page.mat ? matViewOf(after, desk) : null,
    paper: after.problem.prompts.length > 0 ? null : paperViewOf(after, desk, tools),
  };
};
