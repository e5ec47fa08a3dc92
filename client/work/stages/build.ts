import type { StagePage } from '../tool.ts';
import '../../mat/mat.ts';
import { tell } from '../tools/prompts.ts';
import { tilesInWords } from '../tools/tiles-in-words.ts';

/** Numbers told in words, laid in tiles and read back. */
export const build: StagePage = { mat: true, tools: () => [tilesInWords, tell] };
