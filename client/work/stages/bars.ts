import type { StagePage } from '../tool.ts';
import '../../mat/mat.ts';
import { count } from '../tools/count.ts';
import { fact } from '../tools/fact.ts';
import { lay } from '../tools/lay.ts';
import { read } from '../tools/product.ts';
import { row } from '../tools/row.ts';
import { slide } from '../tools/slide.ts';
import { tiles } from '../tools/tiles.ts';

/** Bars counted out, one row or several; where the teacher wants facts laid, each bar belongs to its fact. */
export const bars: StagePage = {
  mat: true,
  tools: ({ policy }) => [tiles, policy.laying === 'fact' ? fact : lay, count, row, slide, read],
};
