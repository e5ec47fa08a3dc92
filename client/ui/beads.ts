/** Colours of the bead bars, as classrooms have them; which these are stands in tokens.css, for paper in print/inks.ts. */
export const BEADS = ['blueFive', 'mauveFive', 'gold'] as const;
export type Beads = (typeof BEADS)[number];

/** A scheme by its name; the usual one where there is none of that name. */
export const beadsNamed = (name: string | null): Beads =>
  BEADS.find((beads) => beads === name) ?? BEADS[0];

/** The page shows its bars in these colours from now on. */
export const showBeads = (beads: Beads): void => {
  document.documentElement.dataset.beads = beads;
};
