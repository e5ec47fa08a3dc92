import type { Values } from '../words/values.ts';
import type { WordId } from '../words/words.ts';

/** A sentence by id with its values: what the page shows and reads aloud. */
export interface Sentence {
  readonly id: WordId;
  readonly values: Values;
}

export const sentence = (id: WordId, values: Values = {}): Sentence => ({ id, values });
