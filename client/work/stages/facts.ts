import type { StagePage } from '../tool.ts';
import '../../mat/mat.ts';
import { count } from '../tools/count.ts';
import { fact } from '../tools/fact.ts';
import { read } from '../tools/product.ts';
import { row } from '../tools/row.ts';
import { slide } from '../tools/slide.ts';
import { tiles } from '../tools/tiles.ts';

/** Each fact laid from memory, then as with bars. */
export const facts: StagePage = {
  mat: true,
  tools: () => [tiles, fact, count, row, slide, read],
};
