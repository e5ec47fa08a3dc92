import { counting } from '../judge/counting.ts';
import { laying } from '../judge/laying.ts';
import { productLine } from '../judge/reading.ts';
import { saying } from '../judge/saying.ts';
import { settling } from '../judge/settling.ts';
import { sliding } from '../judge/sliding.ts';
import type { StageRules } from '../judge/stage.ts';
import { tiles } from '../judge/tiles.ts';
import { nextSaying } from './bar-moves.ts';
import { nextWithBars, pointOfBars } from './with-bars.ts';

/** Several rows of bars. */
export const bars: StageRules = {
  id: 'bars',
  aspects: [tiles, laying, counting, saying, sliding, settling, productLine, pointOfBars],
  next: nextWithBars(nextSaying),
};

/** One row of bars: the same obligations, of which sliding has none. */
export const bars1: StageRules = { ...bars, id: 'bars1' };
