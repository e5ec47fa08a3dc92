import type { Action, Suggestion } from '../../engine/child.ts';
import type { Tool, ToolId } from './tool.ts';

type Served = readonly ToolId[];

const WITH_BARS: Served = ['count'];
const LAST: Served = ['read', 'sum', 'walk', 'tell'];
const ROW_DONE: Served = ['row', 'write', 'figures', 'sum'];

/** Which moves serve what the engine finds sensible next; of a stage's own the first. */
const SERVES: Partial<Record<Suggestion['say']['key'], Served>> = {
  layTile: ['tiles'],
  layBars: ['lay', 'fact'],
  count: WITH_BARS,
  makeTen: WITH_BARS,
  exchange: WITH_BARS,
  sayRow: ['row'],
  sayPrompt: ['walk'],
  sayNumber: ['tell'],
  begin: ['write'],
  writePartial: ['write', 'sum'],
  writeZero: ['write'],
  writeCarry: ['write', 'sum'],
  writeProduct: ['read', 'sum'],
  writeSum: ['sum'],
  writeSquare: ['figures'],
  slide: ['slide'],
  point: ['read', 'sum'],
  finishRow: ROW_DONE,
  finishProduct: ['read', 'sum'],
  finishProblem: LAST,
};

const firstOf = (tools: readonly Tool[], ids: Served): Tool | null => {
  for (const id of ids) {
    const tool = tools.find((each) => each.id === id);
    if (tool !== undefined) return tool;
  }
  return null;
};

/** The move that a suggestion belongs to; null where any may do, as when something is mended. */
export const toolFor = (tools: readonly Tool[], { say }: Suggestion): Tool | null => {
  // A carry of the sum has no row.
  const adding = say.key === 'writeCarry' && Number(say.values.row) < 0;
  return firstOf(tools, adding ? ['sum'] : (SERVES[say.key] ?? []));
};

const served = (action: Action): Served => {
  switch (action.do) {
    case 'layTile':
    case 'liftTile':
      return ['tiles'];
    case 'layBars':
    case 'liftBars':
      return ['lay', 'fact'];
    case 'count':
    case 'makeTen':
    case 'exchange':
      return WITH_BARS;
    case 'slide':
      return ['slide'];
    case 'begin':
      return ['write'];
    case 'say':
      return 'row' in action ? ['row'] : ['walk', 'tell'];
    case 'write':
    case 'rub':
      if ('square' in action) return ['figures'];
      return action.line.endsWith('product') ? LAST : ['write', 'sum'];
    case 'finish':
      return action.what.startsWith('row:') ? ROW_DONE : LAST;
    default:
      return LAST;
  }
};

/** The move in which something was done. */
export const toolOf = (tools: readonly Tool[], action: Action): Tool | null =>
  firstOf(tools, served(action));
