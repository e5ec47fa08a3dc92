import type { StagePage } from '../tool.ts';
import '../../mat/mat.ts';
import { figures } from '../tools/figures.ts';
import { sum } from '../tools/sum.ts';
import { tiles } from '../tools/tiles.ts';

/** No bars: facts in figures on the squares, added along the diagonals. */
export const cells: StagePage = { mat: true, tools: () => [tiles, figures, sum] };
