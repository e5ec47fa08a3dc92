import type { StagePage } from '../tool.ts';
import '../../mat/mat.ts';
import { count } from '../tools/count.ts';
import { figures } from '../tools/figures.ts';
import { lay } from '../tools/lay.ts';
import { read } from '../tools/product.ts';
import { row } from '../tools/row.ts';
import { slide } from '../tools/slide.ts';
import { tiles } from '../tools/tiles.ts';
import { write } from '../tools/write.ts';

const readWithCarries = { ...read, carries: true };

/** A free mat and paper: every move there is. */
export const open: StagePage = {
  mat: true,
  tools: () => [tiles, lay, count, row, slide, figures, write, readWithCarries],
};
