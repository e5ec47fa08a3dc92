import type { StagePage } from '../tool.ts';
import '../../mat/mat.ts';
import { count } from '../tools/count.ts';
import { lay } from '../tools/lay.ts';
import { read } from '../tools/product.ts';
import { slide } from '../tools/slide.ts';
import { tiles } from '../tools/tiles.ts';
import { record as write } from '../tools/write.ts';

/** As with bars, each partial product written; a single row is the product itself. */
export const record: StagePage = {
  mat: true,
  tools: ({ multiplier }) =>
    multiplier.digits.length > 1
      ? [tiles, lay, count, write, slide, read]
      : [tiles, lay, count, read],
};
