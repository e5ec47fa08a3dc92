import type { Suggestion } from '../../engine/child.ts';
import type { Tool, ToolId } from './tool.ts';

type Served = readonly ToolId[];

const WITH_BARS: Served = ['count'];
const LAST: Served = ['read', 'sum', 'walk', 'tell'];

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
  finishRow: ['row', 'write', 'figures', 'sum'],
  finishProduct: ['read', 'sum'],
  finishProblem: LAST,
};

/** The move that a suggestion belongs to; null where any may do, as when something is mended. */
export const toolFor = (tools: readonly Tool[], { say }: Suggestion): Tool | null => {
  // A carry of the sum has no row.
  const adding = say.key === 'writeCarry' && Number(say.values.row) < 0;
  const serves = adding ? ['sum'] : (SERVES[say.key] ?? []);
  for (const id of serves) {
    const tool = tools.find((each) => each.id === id);
    if (tool !== undefined) return tool;
  }
  return null;
};
