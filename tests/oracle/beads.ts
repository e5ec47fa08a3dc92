/** Bead arithmetic of its own, sharing nothing with the engine: a mat of plain counts. */
export type Square = [row: number, column: number];
export interface Told {
  do: string;
  [field: string]: unknown;
}

/** `bars[k]`: how many bars of kind k; `bars[10]`: ten-bars. */
export type Pile = number[];

export class Beads {
  readonly rows: number;
  readonly columns: number;
  readonly piles: Pile[][];

  constructor(rows: number, columns: number) {
    this.rows = rows;
    this.columns = columns;
    this.piles = Array.from({ length: rows }, () =>
      Array.from({ length: columns }, () => Array.from({ length: 11 }, () => 0)),
    );
  }

  pile([row, column]: Square): Pile {
    return this.piles[row]![column]!;
  }

  value(square: Square): number {
    return this.pile(square).reduce((sum, count, kind) => sum + count * kind, 0);
  }

  bars(square: Square): number {
    return this.pile(square).reduce((sum, count) => sum + count, 0);
  }

  total(): bigint {
    let sum = 0n;
    for (const square of this.squares()) {
      sum += BigInt(this.value(square)) * 10n ** BigInt(square[0] + square[1]);
    }
    return sum;
  }

  squares(): Square[] {
    return this.piles.flatMap((row, r) => row.map((_, c): Square => [r, c]));
  }

  /** Does what an action tells, as real beads would. */
  take(told: Told): void {
    const square = told['square'] as Square;
    if (told.do === 'layBars')
      this.pile(square)[told['kind'] as number]! += told['count'] as number;
    if (told.do === 'liftBars')
      this.pile(square)[told['kind'] as number]! -= told['count'] as number;
    if (told.do === 'count') this.count(square, told['total'] as number);
    if (told.do === 'makeTen')
      this.makeTen(square, told['bars'] as number[], told['split'] as never);
    if (told.do === 'exchange') {
      this.pile(told['from'] as Square)[10]! -= told['tens'] as number;
      this.pile(told['to'] as Square)[1]! += told['ones'] as number;
    }
    if (told.do === 'slide') this.slide(told['from'] as Square, told['to'] as Square);
  }

  private count(square: Square, total: number): void {
    const pile = this.pile(square);
    pile.fill(0);
    pile[10] = Math.floor(total / 10);
    if (total % 10 > 0) pile[total % 10] = 1;
  }

  private makeTen(square: Square, bars: number[], split?: { kind: number; take: number }): void {
    const pile = this.pile(square);
    for (const kind of bars) pile[kind]! -= 1;
    if (split !== undefined) pile[split.kind - split.take]! += 1;
    pile[10]! += 1;
  }

  private slide(from: Square, to: Square): void {
    const moving = this.pile(from).slice();
    this.pile(from).fill(0);
    for (const [kind, count] of moving.entries()) this.pile(to)[kind]! += count;
  }

  /** The product as the bottom row shows it, lowest first; what is ten or more is carried in the head. */
  bottomDigits(): number[] {
    const digits: number[] = [];
    let carried = 0;
    for (let column = 0; column < this.columns || carried > 0; column += 1) {
      const total = (column < this.columns ? this.value([0, column]) : 0) + carried;
      digits.push(total % 10);
      carried = Math.floor(total / 10);
    }
    while (digits.length > 1 && digits.at(-1) === 0) digits.pop();
    return digits;
  }
}
