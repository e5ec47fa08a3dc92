import type { Square, Told } from './beads.ts';
import type { Chance } from './chance.ts';
import { type PaperHabits, PaperPupil, type PaperSlip } from './paper-pupil.ts';
import type { Given } from './worker.ts';

type Slot = 'own' | 'fromRight';

export interface CellsHabits {
  readonly facts: 'row by row' | 'column by column' | 'as it comes';
  readonly tensFirst: boolean;
  /** Rows in which the two slots are used the other way round. */
  readonly swapped: readonly boolean[];
  readonly zeros: 'left out' | 'written';
  readonly names: boolean;
}

export function randomCellsHabits(chance: Chance): CellsHabits {
  return {
    facts: chance.pick(['row by row', 'column by column', 'as it comes']),
    tensFirst: chance.maybe(0.3),
    swapped: Array.from({ length: 6 }, () => chance.maybe(0.3)),
    zeros: chance.pick(['left out', 'written']),
    names: chance.maybe(0.3),
  };
}

/** What else a slip may change: what a fact makes, and where its digits go. */
export interface CellsSlip extends PaperSlip {
  readonly fact?: (right: number) => number;
  readonly turned?: (value: number) => boolean;
}

/** A pupil with tiles and figures on the squares who, but for a slip, works right by the own mat and paper. */
export class CellsPupil extends PaperPupil {
  readonly squares = new Map<string, number>();
  readonly tiles = { bottom: new Map<number, number>(), right: new Map<number, number>() };
  private readonly ways: CellsHabits;
  private readonly also: CellsSlip;

  constructor(
    given: Given,
    habits: PaperHabits,
    ways: CellsHabits,
    chance: Chance,
    slip: CellsSlip = {},
  ) {
    super(given, { ...habits, oneRowOn: 'product' }, chance, slip);
    this.ways = ways;
    this.also = slip;
  }

  override do(told: Told): void {
    super.do(told);
    if (told.do === 'layTile') {
      this.tiles[told['edge'] as 'bottom'].set(told['index'] as number, told['digit'] as number);
    }
    if (told['square'] === undefined) return;
    const key = `${(told['square'] as Square).join(':')}@${told['slot']}`;
    if (told.do === 'write') this.squares.set(key, told['digit'] as number);
    if (told.do === 'rub') this.squares.delete(key);
  }

  private layTiles(): void {
    for (const [edge, digits] of [
      ['bottom', this.given.across],
      ['right', this.given.up],
    ] as const)
      for (const [index, digit] of digits.entries())
        this.tell({ do: 'layTile', edge, index, digit });
  }

  private pairs(): Square[] {
    const pairs = [...this.tiles.right.keys()].flatMap((row) =>
      [...this.tiles.bottom.keys()].map((column): Square => [row, column]),
    );
    if (this.ways.facts === 'column by column') pairs.sort((a, b) => a[1] - b[1]);
    if (this.ways.facts !== 'as it comes') return pairs;
    return pairs
      .map((pair) => ({ pair, order: this.chance.below(1_000_000) }))
      .sort((a, b) => a.order - b.order)
      .map(({ pair }) => pair);
  }

  private slotFor(row: number, units: boolean): Slot {
    return units === (this.ways.swapped[row] ?? false) ? 'fromRight' : 'own';
  }

  private writeFact([row, column]: Square): void {
    const right = this.tiles.bottom.get(column)! * this.tiles.right.get(row)!;
    const value = this.also.fact?.(right) ?? right;
    const digits = [value % 10, Math.floor(value / 10)];
    if (this.also.turned?.(right) ?? false) digits.reverse();
    const parts = this.ways.tensFirst ? [1, 0] : [0, 1];
    for (const part of parts) {
      const digit = digits[part]!;
      if (digit === 0 && (this.ways.zeros === 'left out' || right === 0)) continue;
      // A slip may leave no square to the left.
      if (column + part >= this.given.columns) continue;
      const of = this.ways.names ? { of: [row, column] } : {};
      const slot = this.slotFor(row, part === 0);
      this.tell({ do: 'write', square: [row, column + part], slot, digit, ...of });
    }
  }

  protected override addends(index: number): number[] {
    return [...this.squares].flatMap(([key, digit]) => {
      const [row, column] = key.split('@')[0]!.split(':').map(Number);
      return row! + column! === index ? [digit] : [];
    });
  }

  protected override highestAddend(): number {
    const places = [...this.squares]
      .filter(([, digit]) => digit > 0)
      .map(([key]) =>
        key
          .split('@')[0]!
          .split(':')
          .reduce((sum, each) => sum + Number(each), 0),
      );
    return Math.max(-1, ...places);
  }

  override work(): Told[] {
    this.layTiles();
    for (const pair of this.pairs()) this.writeFact(pair);
    if (this.habits.finishesRows) {
      for (const row of this.given.up.keys()) this.tell({ do: 'finish', what: `row:${row}` });
    }
    this.addRows();
    this.end();
    return this.told;
  }
}
