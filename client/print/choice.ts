import type { Problem } from '../../engine/child.ts';
import type { Beads } from '../ui/beads.ts';
import type { Inks } from './inks.ts';
import type { PaperName } from './paper.ts';

export const KINDS = ['mat', 'tiles', 'bars', 'cards', 'answers', 'squared', 'help'] as const;
export type Kind = (typeof KINDS)[number];

/** Sides of a square that can be chosen; `whole`: the largest with which the mat fits on one sheet. */
export const SIDES = ['whole', 35, 50, 70] as const;
export type Side = (typeof SIDES)[number];
export const RULINGS = [5, 7, 10] as const;

/** Everything that decides what is printed; lengths in mm. */
export interface Choice {
  readonly kinds: readonly Kind[];
  readonly paper: PaperName;
  readonly inks: Inks;
  readonly rows: number;
  readonly columns: number;
  /** Places after the point: the lower right square is 10 to the power of minus this. */
  readonly decimals: number;
  readonly side: Side;
  /** How often each digit is printed, on grey and on white. */
  readonly tileSets: number;
  /** How many bars of each length. */
  readonly barSets: number;
  readonly beads: Beads;
  readonly numbers: boolean;
  readonly ruling: (typeof RULINGS)[number];
  readonly problems: readonly Problem[];
}
