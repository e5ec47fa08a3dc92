import type { Beads } from '../ui/beads.ts';

/** Paper is white in any light: the light values of the design tokens, by hierarchy and by bar. */
export const PAPER = '#ffffff';
export const INK = '#14171a';
export const FAINT = '#767676';
export const TILE_BELOW = '#d9d9d9';
export const TINTS = ['#cde9cf', '#cfe0f8', '#f8d3d1'] as const;
export const EDGES = ['#1b6b33', '#1e4c9a', '#a31b1b'] as const;
const BLUE_FIVE = [
  '#d32f2f',
  '#2e9e44',
  '#f48fb1',
  '#fbc02d',
  '#81d4fa',
  '#7b1fa2',
  '#ffffff',
  '#6d4c41',
  '#1a237e',
  '#d9a400',
];
const GOLD = '#d9a400';

/** Kinds 1 to 10 of each scheme. */
export const BEADS: Readonly<Record<Beads, readonly string[]>> = {
  blueFive: BLUE_FIVE,
  mauveFive: BLUE_FIVE.with(4, '#c08bd6').with(5, '#6d4c41').with(7, '#81d4fa'),
  gold: BLUE_FIVE.map(() => GOLD),
};

export type Inks = 'colour' | 'saving';
