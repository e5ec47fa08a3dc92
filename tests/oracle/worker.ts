import { Beads, type Square, type Told } from './beads.ts';
import type { Chance } from './chance.ts';
import type { Habits } from './habits.ts';

interface Tile {
  readonly edge: 'bottom' | 'right';
  readonly index: number;
  readonly digit: number;
}

interface Bars {
  readonly kind: number;
  readonly count: number;
  readonly square?: Square;
  readonly of?: Square;
}

/** Looks at each thing that is about to be done; null: done as meant. */
export type Slip = (told: Told, worker: Worker) => Told[] | null;

export function key([row, column]: Square): string {
  return `${row}:${column}`;
}

/** A problem as digits, lowest first, on a mat whose lowest place is `origin`. */
export interface Given {
  readonly across: readonly number[];
  readonly up: readonly number[];
  readonly rows: number;
  readonly columns: number;
  readonly origin: number;
}

/**
 * A child who does everything right, in an order of its own: picks again and again among all that is
 * sensible now. Knows the bead mat only; shares nothing with the engine.
 */
export class Worker {
  readonly beads: Beads;
  readonly told: Told[] = [];
  readonly given: Given;
  private readonly habits: Habits;
  private readonly chance: Chance;
  private readonly slip: Slip | null;
  private readonly tilesLeft: Tile[];
  /** The child's own tiles, by edge and index: later work goes by them. */
  readonly tiles = { bottom: new Map<number, number>(), right: new Map<number, number>() };
  private readonly toLay = new Map<string, { square: Square; bars: Bars[] | null }>();
  /** Squares that a slip makes the child pass over from now on. */
  readonly passedOver = {
    slides: new Set<string>(),
    settles: new Set<string>(),
    exchanges: new Set<string>(),
  };
  private readonly halves: { from: Square; to: Square; tens: number; ones: number }[] = [];
  private readonly said = new Set<number>();
  private recorded = 0;
  private readonly touched = new Set<number>();
  private readonly finishedRows = new Set<number>();

  constructor(given: Given, habits: Habits, chance: Chance, slip: Slip | null = null) {
    this.given = given;
    this.habits = habits;
    this.chance = chance;
    this.slip = slip;
    this.beads = new Beads(given.rows, given.columns);
    this.tilesLeft = [
      ...given.across.map((digit, index) => ({ edge: 'bottom' as const, index, digit })),
      ...given.up.map((digit, index) => ({ edge: 'right' as const, index, digit })),
    ];
    for (const row of given.up.keys())
      for (const column of given.across.keys()) {
        this.toLay.set(key([row, column]), { square: [row, column], bars: null });
      }
  }

  /** One bar as often as the other digit says, either way round, in one go or bar by bar. */
  private waysToLay([row, column]: Square): Bars[] {
    const across = this.tiles.bottom.get(column) ?? 0;
    const up = this.tiles.right.get(row) ?? 0;
    if (across * up === 0) return [];
    if (this.habits.knows) return this.waysToLayFact([row, column], across * up);
    const [kind, count] = this.chance.maybe(0.8) ? [across, up] : [up, across];
    if (this.chance.maybe(0.7)) return [{ kind, count }];
    return Array.from({ length: count }, () => ({ kind, count: 1 }));
  }

  private waysToLayFact(of: Square, fact: number): Bars[] {
    if (this.chance.maybe(0.2))
      return this.barsOf(fact).map((each) => ({ ...each, square: of, of }));
    const left: Square = [of[0], of[1] + 1];
    const digits = [
      { square: of, of, kind: fact % 10, count: 1 },
      { square: left, of, kind: Math.floor(fact / 10), count: 1 },
    ];
    const shown = digits.filter(({ kind }) => kind > 0);
    return this.chance.maybe(0.5) ? shown : shown.reverse();
  }

  /** So many beads in bars of nine and a rest. */
  private barsOf(beads: number): Bars[] {
    const nines = { kind: 9, count: Math.floor(beads / 9) };
    const rest = { kind: beads % 9, count: 1 };
    return [nines, rest].filter(({ kind, count }) => kind > 0 && count > 0);
  }

  /** Tells what the child does; once, a slip may change it, leave it out or add to it. */
  private tell(told: Told): void {
    for (const each of this.slip?.(told, this) ?? [told]) {
      this.told.push(each);
      this.beads.take(each);
      if (each.do === 'exchange') this.crossed(each['from'] as Square, each['to'] as Square);
      if (each.do === 'layTile')
        this.tiles[each.edge as 'bottom'].set(each.index as number, each.digit as number);
    }
  }

  /** Bars that went to another row: neither row can be read any more as it was. */
  private crossed(from: Square, to: Square): void {
    if (from[0] !== to[0]) this.touched.add(from[0]).add(to[0]);
  }

  private rowLaid(row: number): boolean {
    return (
      ![...this.toLay.values()].some(({ square }) => square[0] === row) &&
      !this.tilesLeft.some(({ edge, index }) => edge === 'bottom' || index === row)
    );
  }

  private tileOptions(): (() => void)[] {
    return this.tilesLeft.map((tile) => () => {
      this.tilesLeft.splice(this.tilesLeft.indexOf(tile), 1);
      this.tell({ do: 'layTile', ...tile });
    });
  }

  private mayLay([row, column]: Square): boolean {
    const ready = !this.tilesLeft.some(
      ({ edge, index }) => index === (edge === 'bottom' ? column : row),
    );
    const others = [...this.toLay.values()].map(({ square }) => square[0]);
    if (this.habits.rows === 'units first') return ready && !others.some((other) => other < row);
    if (this.habits.rows === 'top first') return ready && !others.some((other) => other > row);
    return ready;
  }

  private layOptions(): (() => void)[] {
    return [...this.toLay.values()]
      .filter(({ square }) => this.mayLay(square))
      .map(({ square, bars }) => () => {
        const left = bars ?? this.waysToLay(square);
        this.toLay.set(key(square), { square, bars: left });
        const next = left.shift();
        if (left.length === 0) this.toLay.delete(key(square));
        if (next !== undefined) this.tell({ do: 'layBars', square, ...next });
      });
  }

  private beingLaid(square: Square): boolean {
    return (this.toLay.get(key(square))?.bars ?? null) !== null;
  }

  /** Counting is put off by those who slide everything first. */
  private maySettle(square: Square): boolean {
    if (this.beingLaid(square) || this.passedOver.settles.has(key(square))) return false;
    if (square[0] > 0 && this.given.up.length === 1 && !this.said.has(0)) return false;
    if (this.passedOver.slides.has(key(square))) return this.toLay.size === 0;
    if (this.habits.slides !== 'before counting' || this.given.up.length === 1) return true;
    return this.toLay.size === 0 && square[0] === 0 && this.nothingAbove();
  }

  private nothingAbove(): boolean {
    return this.beads
      .squares()
      .every(
        (square) =>
          square[0] === 0 ||
          this.beads.value(square) === 0 ||
          this.passedOver.slides.has(key(square)) ||
          this.lowestRow(square) === square[0],
      );
  }

  private settleOptions(): (() => void)[] {
    const options: (() => void)[] = [];
    for (const square of this.beads.squares()) {
      const value = this.beads.value(square);
      if (value === 0 || !this.maySettle(square)) continue;
      const tens = this.beads.pile(square)[10]!;
      const loose = this.beads.bars(square) - tens;
      if (loose > 1 && this.habits.tens !== 'make ten') {
        options.push(() => this.tell({ do: 'count', square, total: value }));
      }
      if (loose > 1 && value - 10 * tens >= 10 && this.habits.tens !== 'count') {
        options.push(() => this.makeTen(square));
      }
      if (
        tens > 0 &&
        square[1] + 1 < this.given.columns &&
        !this.passedOver.exchanges.has(key(square))
      )
        options.push(() => this.exchange(square));
    }
    return options;
  }

  /** Picks bars until they make ten, the last one split where it is too long. */
  private makeTen(square: Square): void {
    const pile = this.beads.pile(square).slice();
    const bars: number[] = [];
    let beads = 0;
    while (beads < 10) {
      const kinds = [1, 2, 3, 4, 5, 6, 7, 8, 9].filter((kind) => pile[kind]! > 0);
      const kind = this.chance.pick(kinds);
      pile[kind]! -= 1;
      bars.push(kind);
      beads += kind;
    }
    const last = bars.at(-1)!;
    const split = beads > 10 ? { split: { kind: last, take: last - (beads - 10) } } : {};
    this.tell({ do: 'makeTen', square, bars, ...split });
  }

  private exchange(from: Square): void {
    const tens = 1 + this.chance.below(this.beads.pile(from)[10]!);
    const left: Square = [from[0], from[1] + 1];
    const down: Square = [from[0] - 1, from[1] + 2];
    const downward =
      from[0] > 0 && down[1] < this.given.columns && !this.mustRecord() && this.chance.maybe(0.1);
    const to = downward ? down : left;
    if (this.chance.maybe(0.1)) {
      this.halves.push({ from, to, tens: 0, ones: tens });
      this.tell({ do: 'exchange', from, tens, to, ones: 0 });
    } else this.tell({ do: 'exchange', from, tens, to, ones: tens });
  }

  private halfOptions(): (() => void)[] {
    return this.halves.map((half) => () => {
      this.halves.splice(this.halves.indexOf(half), 1);
      this.tell({ do: 'exchange', ...half });
    });
  }

  private slideOptions(): (() => void)[] {
    // A single row must be said, and can only be read before anything else comes down on it.
    if (this.given.up.length === 1 && !this.said.has(0)) return [];
    if (this.mustRecord()) return [];
    const late = this.habits.slides === 'at the end';
    if (late && (this.toLay.size > 0 || this.tilesLeft.length > 0)) return [];
    return this.beads
      .squares()
      .filter((square) => square[0] > 0 && this.beads.value(square) > 0 && !this.beingLaid(square))
      .filter(
        (square) => !this.passedOver.slides.has(key(square)) && this.lowestRow(square) < square[0],
      )
      .map((from) => () => {
        const lowest = this.lowestRow(from);
        const row = this.chance.maybe(0.7) ? lowest : lowest + this.chance.below(from[0] - lowest);
        this.touched.add(from[0]).add(row);
        this.tell({ do: 'slide', from, to: [row, from[0] + from[1] - row] });
      });
  }

  /** Whether bars that a slip left above are still there at the end. */
  leftAbove(): boolean {
    return this.beads.squares().some((square) => square[0] > 0 && this.beads.value(square) > 0);
  }

  /** How far down the diagonal the mat goes. */
  lowestRow([row, column]: Square): number {
    return Math.max(0, row + column - (this.given.columns - 1));
  }

  /** What lies on a row of the child's own mat, nothing of it slid yet. */
  private rowValue(row: number): bigint {
    return this.beads
      .squares()
      .filter((square) => square[0] === row)
      .reduce((sum, [r, c]) => sum + BigInt(this.beads.value([r, c])) * 10n ** BigInt(r + c), 0n);
  }

  private rowOptions(): (() => void)[] {
    return this.given.up.flatMap((_, row) => {
      const half = this.halves.some(({ from }) => from[0] === row);
      if (!this.rowLaid(row) || half) return [];
      const options: (() => void)[] = [];
      const single = this.given.up.length === 1;
      if (
        !this.said.has(row) &&
        !this.touched.has(row) &&
        (this.habits.says || single) &&
        !this.mustRecord()
      ) {
        options.push(() => this.sayRow(row));
      }
      if (!this.finishedRows.has(row) && !(this.mustRecord() && !this.said.has(row))) {
        options.push(() => {
          this.finishedRows.add(row);
          this.tell({ do: 'finish', what: `row:${row}` });
        });
      }
      return options;
    });
  }

  /** Partial products are read before anything slides. */
  private mustRecord(): boolean {
    const several = this.given.up.length > 1;
    return several && this.habits.records === true && this.said.size < this.given.up.length;
  }

  private recordOptions(): (() => void)[] {
    if (!this.mustRecord()) return [];
    return [...this.given.up.keys()]
      .filter((row) => !this.said.has(row) && this.rowLaid(row))
      .filter((row) => !this.halves.some(({ from }) => from[0] === row))
      .map((row) => () => this.recordRow(row));
  }

  /** In either order, from either side, the placeholders written or their places left empty. */
  private recordRow(row: number): void {
    const value = this.rowValue(row) / 10n ** BigInt(row);
    const line = `partial:${this.recorded}`;
    this.said.add(row);
    if (value === 0n && this.chance.maybe(0.5)) return;
    this.recorded += 1;
    this.tell({ do: 'begin', line, row });
    const zeros = this.chance.maybe(0.6) && value > 0n ? row : 0;
    const digits = [...value.toString()].reverse().map(Number);
    if (value > 0n && this.chance.maybe(0.2)) digits.push(0);
    const places = [
      ...Array.from({ length: zeros }, (_, at) => ({ at, digit: 0 })),
      ...digits.map((digit, at) => ({ at: row + at, digit })),
    ];
    if (this.chance.maybe(0.3)) places.reverse();
    for (const { at, digit } of places) {
      this.tell({ do: 'write', line, place: this.given.origin + at, digit });
    }
  }

  private sayRow(row: number): void {
    this.said.add(row);
    this.tell({ do: 'say', row, answer: written(this.rowValue(row), this.given.origin) });
  }

  private dawdleOptions(): (() => void)[] {
    if (!this.habits.dawdles || !this.chance.maybe(0.1)) return [];
    return [
      () => this.tell({ do: 'check' }),
      () => this.tell({ do: 'hint', level: 1 }),
      () => {
        this.told.push({ do: 'layBars', square: [0, 0], kind: 3, count: 2 }, { do: 'undo' });
      },
    ];
  }

  /** All that must still be done before the product can be read. */
  private pressing(): (() => void)[] {
    return [
      ...this.tileOptions(),
      ...this.layOptions(),
      ...this.halfOptions(),
      ...this.slideOptions(),
      ...this.settleOptions(),
      ...this.recordOptions(),
    ];
  }

  private readProduct(): void {
    const digits = this.beads.bottomDigits().map((digit, index) => ({
      place: this.given.origin + index,
      digit,
    }));
    if (this.chance.maybe(0.4)) digits.reverse();
    for (const each of digits) this.tell({ do: 'write', line: 'product', ...each });
    if (this.given.origin < 0)
      this.tell({ do: 'point', on: 'product', places: -this.given.origin });
  }

  work(): Told[] {
    for (;;) {
      const pressing = this.pressing();
      if (pressing.length === 0 && (this.given.up.length > 1 || this.said.has(0))) break;
      if (pressing.length === 0) this.sayRow(0);
      if (pressing.length === 0) continue;
      this.chance.pick([...pressing, ...this.rowOptions(), ...this.dawdleOptions()])();
    }
    this.readProduct();
    if (this.chance.maybe(0.8)) this.tell({ do: 'finish', what: 'product' });
    this.tell({ do: 'finish', what: 'problem' });
    return this.told;
  }
}

/** An amount in units of 10^origin as a decimal. */
export function written(amount: bigint, origin: number): string {
  if (origin >= 0) return `${amount * 10n ** BigInt(origin)}`;
  const text = amount.toString().padStart(1 - origin, '0');
  return `${text.slice(0, origin)}.${text.slice(origin)}`;
}
