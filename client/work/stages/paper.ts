import type { StagePage } from '../tool.ts';
import { sum } from '../tools/sum.ts';
import { write } from '../tools/write.ts';

/** The written algorithm alone. */
export const paper: StagePage = {
  mat: false,
  tools: ({ multiplier }) => (multiplier.digits.length > 1 ? [write, sum] : [sum]),
};
