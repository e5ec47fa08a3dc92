import type { Told } from './beads.ts';
import type { Chance } from './chance.ts';
import { Sheet } from './sheet.ts';
import type { Given } from './worker.ts';

export interface PaperHabits {
  readonly rows: 'units first' | 'top first';
  readonly carries: 'written' | 'in the head';
  readonly placeholders: 'written' | 'left empty';
  readonly zeroRows: 'left out' | 'one zero' | 'zeros';
  readonly digits: 'from the right' | 'from the left';
  readonly leadingZero: boolean;
  readonly rubsCarries: boolean;
  readonly finishesRows: boolean;
  readonly leavesZerosOut: boolean;
  readonly oneRowOn: 'product' | 'partial:0';
  readonly dawdles: boolean;
}

export function randomPaperHabits(chance: Chance): PaperHabits {
  return {
    rows: chance.pick(['units first', 'top first']),
    carries: chance.pick(['written', 'in the head']),
    placeholders: chance.pick(['written', 'left empty']),
    zeroRows: chance.pick(['left out', 'one zero', 'zeros']),
    digits: chance.maybe(0.8) ? 'from the right' : 'from the left',
    leadingZero: chance.maybe(0.2),
    rubsCarries: chance.maybe(0.2),
    finishesRows: chance.maybe(0.7),
    leavesZerosOut: chance.maybe(0.3),
    oneRowOn: chance.pick(['product', 'partial:0']),
    dawdles: chance.maybe(0.3),
  };
}

/** What a slip may change: an action, what a column makes, where a row begins, which row is begun. */
export interface PaperSlip {
  readonly tell?: (told: Told, pupil: PaperPupil) => Told[] | null;
  readonly value?: (value: number, most: number, sum: boolean) => number;
  readonly shift?: (row: number) => number;
  readonly begin?: (row: number, before: readonly number[]) => number;
}

/** The rows to be added: how a pupil's line of digits comes about. */
interface LineOf {
  readonly line: string;
  readonly carryLine: string;
  readonly first: number;
  readonly base: (column: number) => number;
  /** Columns that have something of their own. */
  readonly length: () => number;
  readonly most: (column: number) => number;
  readonly sum: boolean;
}

/** A pupil with paper who, but for a slip, does everything right for what stands on the own paper. */
export class PaperPupil {
  readonly given: Given;
  readonly habits: PaperHabits;
  readonly sheet = new Sheet();
  /** Where the digits of a line begin, by line. */
  readonly firsts = new Map<string, number>();
  readonly told: Told[] = [];
  protected readonly chance: Chance;
  protected readonly slip: PaperSlip;

  constructor(given: Given, habits: PaperHabits, chance: Chance, slip: PaperSlip = {}) {
    this.given = given;
    this.habits = habits;
    this.chance = chance;
    this.slip = slip;
  }

  protected tell(told: Told): void {
    for (const each of this.slip.tell?.(told, this) ?? [told]) this.do(each);
    if (!this.habits.dawdles || !this.chance.maybe(0.05)) return;
    this.do(this.chance.pick<Told>([{ do: 'check' }, { do: 'hint', level: 1 }]));
  }

  do(told: Told): void {
    this.told.push(told);
    this.sheet.take(told);
  }

  protected place(index: number): number {
    return this.given.origin + index;
  }

  protected write(line: string, index: number, digit: number): void {
    this.tell({ do: 'write', line, place: this.place(index), digit });
  }

  private carryAt(line: string, index: number): number | undefined {
    return this.sheet.at(line, this.place(index));
  }

  private rows(): number[] {
    const rows = [...this.given.up.keys()];
    return this.habits.rows === 'units first' ? rows : rows.reverse();
  }

  private makesNothing(row: number): boolean {
    return this.given.up[row] === 0 || this.given.across.every((digit) => digit === 0);
  }

  private workRow(line: string, row: number): void {
    const { up, across } = this.given;
    const shift = this.makesNothing(row) ? 0 : (this.slip.shift?.(row) ?? 0);
    const first = row + shift;
    this.firsts.set(line, first);
    if (up.length > 1 && (this.habits.placeholders === 'written' || shift > 0)) {
      for (let index = 0; index < first; index += 1) this.write(line, index, 0);
    }
    const digit = up[row]!;
    this.workLine({
      line,
      carryLine: this.carryLineOf(line),
      first,
      base: (column) => (across[column] ?? 0) * digit,
      length: () => across.length,
      most: () => Math.max(10 * digit - 1, 9),
      sum: false,
    });
  }

  private carryLineOf(line: string): string {
    if (line === 'product') return this.chance.pick(['carry:0', 'carry:product']);
    return line.replace('partial', 'carry');
  }

  private workLine(work: LineOf): void {
    if (this.habits.digits === 'from the left') this.workFromTheLeft(work);
    else this.workFromTheRight(work);
  }

  private workFromTheRight({ line, carryLine, first, base, length, most, sum }: LineOf): void {
    let inHead = 0;
    let column = 0;
    for (; column < length() || this.carryIn(carryLine, first + column, inHead) > 0; column += 1) {
      const carry = this.carryIn(carryLine, first + column, inHead);
      const right = base(column) + carry;
      const own = column < length() ? most(column) : right;
      const value = own > right ? (this.slip.value?.(right, own, sum) ?? right) : right;
      this.write(line, first + column, value % 10);
      inHead = Math.floor(value / 10);
      if (this.habits.carries === 'written' && inHead > 0 && column + 1 < length()) {
        this.write(carryLine, first + column + 1, inHead);
        // Who writes carries goes by them.
        inHead = this.carryAt(carryLine, first + column + 1) ?? 0;
      }
      if (this.habits.rubsCarries && this.carryAt(carryLine, first + column) !== undefined) {
        this.do({ do: 'rub', line: carryLine, place: this.place(first + column) });
      }
    }
    if (this.habits.leadingZero) this.write(line, first + column, 0);
  }

  private carryIn(line: string, index: number, inHead: number): number {
    return this.carryAt(line, index) ?? inHead;
  }

  private workFromTheLeft({ line, first, base, length }: LineOf): void {
    const digits: number[] = [];
    let carry = 0;
    for (let column = 0; column < length() || carry > 0; column += 1) {
      const value = base(column) + carry;
      digits.push(value % 10);
      carry = Math.floor(value / 10);
    }
    for (let column = digits.length - 1; column >= 0; column -= 1) {
      this.write(line, first + column, digits[column]!);
    }
  }

  private workRows(): void {
    const begun: number[] = [];
    for (const row of this.rows()) {
      const line = `partial:${begun.length}`;
      if (this.makesNothing(row) && this.habits.zeroRows === 'left out') continue;
      const worked = this.slip.begin?.(row, begun) ?? row;
      begun.push(worked);
      this.do({ do: 'begin', line, row: worked });
      if (!this.makesNothing(worked)) this.workRow(line, worked);
      else this.writeZeros(line, worked);
      if (this.habits.finishesRows) this.tell({ do: 'finish', what: `row:${worked}` });
    }
  }

  private writeZeros(line: string, row: number): void {
    const count = this.habits.zeroRows === 'zeros' ? row + this.given.across.length : 1;
    for (let index = 0; index < count; index += 1) this.write(line, index, 0);
  }

  /** The digits that stand in a column of the own paper. */
  protected addends(index: number): number[] {
    return this.sheet
      .written('partial')
      .filter(({ place }) => place === this.place(index))
      .map(({ digit }) => digit);
  }

  /** What a column of so many digits can make, with what can be carried into it. */
  private mostIn(column: number): number {
    const below = column === 0 ? 0 : this.mostIn(column - 1);
    return 9 * this.addends(column).length + Math.floor(below / 10);
  }

  protected highestAddend(): number {
    const above = this.sheet.written('partial').filter(({ digit }) => digit > 0);
    return Math.max(-1, ...above.map(({ place }) => place - this.given.origin));
  }

  protected addRows(): void {
    if (this.highestAddend() < 0) {
      this.write('product', 0, 0);
      return;
    }
    this.workLine({
      line: 'product',
      carryLine: 'carry:product',
      first: 0,
      base: (column) => this.addends(column).reduce((sum, digit) => sum + digit, 0),
      length: () => this.highestAddend() + 1,
      most: (column) => this.mostIn(column),
      sum: true,
    });
  }

  /** Zeros at the end of the decimals, rubbed out of the product; answers how many. */
  private leaveZerosOut(): number {
    if (!this.habits.leavesZerosOut || this.habits.oneRowOn !== 'product') return 0;
    if (this.sheet.written('product').every(({ digit }) => digit === 0)) return 0;
    let count = 0;
    while (this.place(count) < 0 && this.sheet.at('product', this.place(count)) === 0) {
      this.do({ do: 'rub', line: 'product', place: this.place(count) });
      count += 1;
    }
    return this.chance.maybe(0.5) ? count : 0;
  }

  work(): Told[] {
    if (this.given.up.length === 1) this.workRow(this.habits.oneRowOn, 0);
    else {
      this.workRows();
      this.addRows();
    }
    this.end();
    return this.told;
  }

  protected end(): void {
    if (this.given.origin < 0) {
      const places = -this.given.origin - this.leaveZerosOut();
      this.tell({ do: 'point', on: 'product', places });
    }
    if (this.chance.maybe(0.8)) this.tell({ do: 'finish', what: 'product' });
    this.do({ do: 'finish', what: 'problem' });
  }
}
