import type { Square } from '../../mat/geometry.ts';
import { isOver, ownDue, trueDue } from '../ledger.ts';
import { remembered } from '../memo.ts';
import type { Moment, Plan, Scene } from '../scene.ts';
import { isFinal } from './rows-written.ts';
import { type Entry, entriesOf, PARTS, type Part } from './squares.ts';

/** One fact on the squares: what its own tiles make due and what stands in its two slots. */
export interface Fact {
  readonly pair: Square;
  /** null: a tile is missing, so nothing is owed or forbidden yet. */
  readonly due: number | null;
  readonly written: Readonly<Partial<Record<Part, Entry>>>;
  /** Slots where a digit stands now that names another pair. */
  readonly covered: readonly Part[];
  readonly final: boolean;
}

export interface Squares {
  readonly facts: readonly Fact[];
  /** Digits that say of themselves that they belong to another pair. */
  readonly astray: readonly Entry[];
  /** By row: the slots are used the other way round. */
  readonly swapped: readonly boolean[];
  /** Actions whose digit would be right the other way round, in rows that do not show yet how they are written. */
  readonly doubted: readonly number[];
}

export function digitDue(due: number, part: Part): number {
  return part === 'units' ? due % 10 : Math.floor(due / 10);
}

/** Whether nothing more comes in this row, or anywhere. */
interface Ends {
  readonly row: boolean;
  readonly all: boolean;
}

/**
 * Without both tiles nothing is due; at the end what is right for the true problem is let stand. Beyond the two
 * numbers no tile is to come: there the finish of the row is the end.
 */
function dueOf(scene: Scene, pair: Square, value: number, ends: Ends): number | null {
  const { plan, position } = scene;
  const own = ownDue(position, pair);
  const outside = pair[0] >= plan.up.length || pair[1] >= plan.across.length;
  if (own !== null || !(ends.all || (outside && ends.row))) return own;
  return value === trueDue(plan, pair) ? value : 0;
}

function factsOf(scene: Scene, ends: Ends, row: number, entries: readonly Entry[]): Fact[] {
  const final = ends.row;
  const written: Partial<Record<Part, Entry>>[] = [];
  const covered: Part[][] = [];
  const outside: Fact[] = [];
  for (const entry of entries) {
    if (isAstray(entry)) {
      covered[entry.pair[1]] = [...(covered[entry.pair[1]] ?? []), entry.part];
      continue;
    }
    if (entry.pair[1] < 0) {
      // Nothing comes from the right of the last column.
      const written = { [entry.part]: entry };
      outside.push({ pair: entry.pair, due: 0, written, covered: [], final });
      continue;
    }
    const before = written[entry.pair[1]];
    written[entry.pair[1]] =
      entry.part === 'units' ? withUnits(entry, before?.tens) : withTens(entry, before?.units);
  }
  const width = Math.max(scene.plan.across.length, tilesWide(scene), written.length);
  const inside = Array.from({ length: width }, (_, column): Fact => {
    const pair: Square = [row, column];
    const own = written[column] ?? {};
    return {
      pair,
      due: dueOf(scene, pair, writtenValue(own), ends),
      written: own,
      covered: covered[column] ?? [],
      final,
    };
  });
  return [...outside, ...inside];
}

function withUnits(units: Entry, tens: Entry | undefined): Fact['written'] {
  return tens === undefined ? { units } : { units, tens };
}

function withTens(tens: Entry, units: Entry | undefined): Fact['written'] {
  return units === undefined ? { tens } : { units, tens };
}

/** Columns as far as the child's tiles reach. */
function tilesWide({ position }: Scene): number {
  return position.tiles.bottom.findLastIndex((tile) => tile !== null) + 1;
}

function isAstray({ of, pair }: Entry): boolean {
  return of !== undefined && (of[0] !== pair[0] || of[1] !== pair[1]);
}

export function writtenValue(written: Fact['written']): number {
  return 10 * (written.tens?.digit ?? 0) + (written.units?.digit ?? 0);
}

/** Nothing written is right only for a zero. */
export function isRight(fact: Fact, part: Part): boolean {
  const given = fact.written[part]?.digit;
  const due = digitDue(fact.due ?? 0, part);
  return given === undefined ? due === 0 : given === due;
}

/** The squares row by row, the slots of each row as they read best: all as usual or all swapped. */
export function readSquares(scene: Scene, moment: Moment): Squares {
  const { position, ledger } = scene;
  const from: unknown[] = [position.tiles, ledger.squarePens, ledger.factDigits, position.finished];
  if (moment.at === 'row') from.push(ROWS[moment.row]!);
  return remembered(scene.memo, NAMES[moment.at], from, () => readRows(scene, moment));
}

const NAMES: Readonly<Record<Moment['at'], string>> = {
  now: 'squares now',
  row: 'squares at a row',
  product: 'squares at the product',
  problem: 'squares at the product',
};

const ROWS = Array.from({ length: 6 }, (_, row) => `row ${row} of squares`);
const LAST_ROWS = ROWS.map((row) => `${row} at the end`);

/** One row of squares read one way. */
interface RowRead {
  readonly found: readonly Fact[];
  readonly lost: readonly Entry[];
  readonly amiss: number;
}

function readRows(scene: Scene, moment: Moment): Squares {
  const facts: Fact[] = [];
  const astray: Entry[] = [];
  const turned: boolean[] = [];
  const doubted: number[] = [];
  for (let row = 0; row < scene.plan.rows; row += 1) {
    const { found, lost, swapped, rival } = readRow(scene, moment, row);
    facts.push(...found);
    astray.push(...lost);
    turned.push(swapped);
    if (rival !== null) doubted.push(...rightActs(rival));
  }
  return { facts, astray, swapped: turned, doubted };
}

/**
 * An answer at each step may have to guess which way a row is written: of two slips, or of one with both digits of a
 * fact, in a row whose slots are swapped it may then ask two steps. What would be right the other way is not asked.
 * `rival`: the other reading, as long as the row is not finished and one slip may make the difference.
 */
interface BestRead extends RowRead {
  readonly swapped: boolean;
  readonly rival: RowRead | null;
}

/** One slip with a fact may be wrong in both its digits. */
const ONE_SLIP = 2;

function readRow(scene: Scene, moment: Moment, row: number): BestRead {
  const over = isOver(moment);
  const final = row < scene.plan.up.length ? isFinal(scene, moment, row) : over;
  const from = [scene.position.tiles, scene.ledger.squarePens[row], final];
  const name = (over ? LAST_ROWS : ROWS)[row]!;
  const ends: Ends = { row: final, all: over };
  const { usual, other } = remembered(scene.memo, name, from, () => {
    const found = readWay(scene, ends, row, false);
    return { usual: found, other: found.amiss > 0 ? readWay(scene, ends, row, true) : found };
  });
  const swapped = isSwapped(scene, usual, other);
  const close = !final && other !== usual && Math.abs(other.amiss - usual.amiss) <= ONE_SLIP;
  const rival = close ? (swapped ? usual : other) : null;
  return { ...(swapped ? other : usual), swapped, rival };
}

function rightActs({ found }: RowRead): number[] {
  return found.flatMap((fact) =>
    PARTS.flatMap((part) => {
      const entry = fact.written[part];
      return entry !== undefined && fact.due !== null && isRight(fact, part) ? [entry.act] : [];
    }),
  );
}

/** Where both read equally well, the row is read on as it was read so far. */
function isSwapped(scene: Scene, usual: RowRead, other: RowRead): boolean {
  if (other.amiss !== usual.amiss || other === usual) return other.amiss < usual.amiss;
  return keptIn(scene, other.found) > keptIn(scene, usual.found);
}

function readWay(scene: Scene, ends: Ends, row: number, swapped: boolean): RowRead {
  const entries = entriesOf(scene, row, swapped);
  const found = factsOf(scene, ends, row, entries);
  const lost = entries.filter(isAstray);
  // A digit that names another pair than its slot's speaks for the other way more than a wrong one.
  return { found, lost, amiss: 2 * lost.length + amissIn(found, lost) };
}

/** Written over by what is counted already, or standing elsewhere with its name. */
function isExcused({ pair, due, written, covered }: Fact, part: Part, lost: readonly Entry[]) {
  if (covered.includes(part)) return true;
  const isIt = ({ of, digit }: Entry) =>
    of![0] === pair[0] && of![1] === pair[1] && digit === digitDue(due ?? 0, part);
  return written[part] === undefined && lost.some(isIt);
}

/** How many digits stand, or are written over by what names another pair, that were right when they were written. */
function keptIn({ ledger, plan }: Scene, facts: readonly Fact[]): number {
  return facts.reduce((sum, { pair, written, covered }) => {
    const kept = PARTS.filter((part) => {
      const before = ledger.factDigits[factSlot(plan, pair, part)];
      return before !== undefined && (covered.includes(part) || written[part]?.digit === before);
    });
    return sum + kept.length;
  }, 0);
}

/** Index of a slot of a pair in `Ledger.factDigits`; a pair may lie one square to the right of the mat. */
export function factSlot({ columns }: Plan, [row, column]: Square, part: Part): number {
  return 2 * (row * (columns + 1) + column + 1) + (part === 'units' ? 0 : 1);
}

/** Units where the tens belong and the other way round. */
export function isTurned({ due, written }: Fact): boolean {
  if (due === null || due === 0 || due % 11 === 0) return false;
  const { units, tens } = written;
  return 10 * (units?.digit ?? 0) + (tens?.digit ?? 0) === due;
}

/** A digit that would come from beyond the last column speaks for the other way more than a wrong one. */
function amissIn(facts: readonly Fact[], lost: readonly Entry[]): number {
  return facts.reduce((sum, fact) => {
    const written = PARTS.filter((part) => fact.written[part] !== undefined);
    if (fact.pair[1] < 0) return sum + 2 * written.length;
    if (fact.due === null) return sum + written.length;
    if (isTurned(fact)) return sum + 1;
    const wrong = PARTS.filter((part) => !isExcused(fact, part, lost) && !isRight(fact, part));
    return sum + wrong.filter((part) => fact.final || written.includes(part)).length;
  }, 0);
}
