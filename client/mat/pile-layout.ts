/** One bar of a pile, placed inside its box; lengths in the box's own units. */
export interface PlacedBar {
  readonly kind: number;
  readonly x: number;
  readonly y: number;
}

export interface PileLayout {
  /** Distance from bead to bead. */
  readonly bead: number;
  readonly bars: readonly PlacedBar[];
}

/** Height of a bar's row in beads: close on the mat, wide enough for a finger in an opened square. */
export const ROW = { close: 1.22, wide: 1.8 } as const;
/** The box a pile has: lengths in pixels, `most` the largest bead, `row` as in ROW, `between` as in BETWEEN. */
interface Room {
  readonly width: number;
  readonly height: number;
  readonly most: number;
  readonly row: number;
  readonly between: number;
}

/** Beads of room between two columns: more where each bar has its number beside it. */
export const BETWEEN = { plain: 0.7, numbered: 1.5 } as const;

/** The bars of a pile one by one: ten-bars first, then longest to shortest, so that equal bars stand together. */
export const barsOf = (counts: readonly number[]): number[] => {
  const bars: number[] = [];
  for (let kind = 10; kind >= 1; kind -= 1)
    for (let i = 0; i < (counts[kind - 1] ?? 0); i += 1) bars.push(kind);
  return bars;
};

const chunk = (bars: readonly number[], size: number): number[][] => {
  const parts: number[][] = [];
  for (let i = 0; i < bars.length; i += size) parts.push(bars.slice(i, i + size));
  return parts;
};

const beadFor = (parts: readonly number[][], { width, height, row, between }: Room): number => {
  const across = parts.reduce((sum, part) => sum + Math.max(...part), 0);
  const rows = Math.max(...parts.map((part) => part.length));
  return Math.min(width / (across + between * (parts.length - 1)), height / (rows * row));
};

const place = (parts: readonly number[][], bead: number, { row, between }: Room): PlacedBar[] => {
  const bars: PlacedBar[] = [];
  let left = 0;
  for (const part of parts) {
    for (const [i, kind] of part.entries()) bars.push({ kind, x: left, y: (i + 0.5) * bead * row });
    left += (Math.max(...part) + between) * bead;
  }
  return bars;
};

/** Arranges bars in as many columns as let the beads be largest, so that a pile can be counted by eye. */
export const layPile = (counts: readonly number[], room: Room): PileLayout => {
  const bars = barsOf(counts);
  if (bars.length === 0) return { bead: 0, bars: [] };
  let best = { parts: [bars], bead: 0 };
  for (let columns = 1; columns <= Math.min(6, bars.length); columns += 1) {
    const parts = chunk(bars, Math.ceil(bars.length / columns));
    const bead = beadFor(parts, room);
    if (bead > best.bead) best = { parts, bead };
  }
  const bead = Math.min(best.bead, room.most);
  return { bead, bars: place(best.parts, bead, room) };
};
