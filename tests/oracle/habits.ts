import type { Chance } from './chance.ts';

/** How this child likes to work. */
export interface Habits {
  readonly rows: 'units first' | 'top first' | 'as it comes';
  readonly slides: 'before counting' | 'at the end' | 'as it comes';
  readonly tens: 'count' | 'make ten' | 'both';
  readonly says: boolean;
  /** Lays each product from memory, units here and tens on the square to the left or all on its own square. */
  readonly knows?: boolean;
  /** Writes each row's partial product, before anything slides. */
  readonly records?: boolean;
  readonly dawdles: boolean;
}

export function randomHabits(chance: Chance): Habits {
  return {
    rows: chance.pick(['units first', 'top first', 'top first', 'as it comes']),
    slides: chance.pick(['before counting', 'before counting', 'at the end', 'as it comes']),
    tens: chance.pick(['count', 'make ten', 'both']),
    says: chance.maybe(0.6),
    dawdles: chance.maybe(0.3),
  };
}
