import type { StagePage } from '../tool.ts';
import '../../mat/mat.ts';
import { walk as tool } from '../tools/prompts.ts';

/** Squares and places. */
export const walk: StagePage = { mat: true, tools: () => [tool] };
