import type { Square } from '../../mat/geometry.ts';
import { isOver, ownDue, trueDue } from '../ledger.ts';
import type { Moment, Scene } from '../scene.ts';
import { isFinal } from './rows-written.ts';
import { type Entry, entriesByRow, PARTS, type Part } from './squares.ts';

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
}

export function digitDue(due: number, part: Part): number {
  return part === 'units' ? due % 10 : Math.floor(due / 10);
}

/**
 * Without both tiles nothing is due; at the end what is right for the true problem is let stand. Beyond the two
 * numbers no tile is to come: there the finish of the row is the end.
 */
function dueOf(
  scene: Scene,
  pair: Square,
  value: number,
  ends: { row: boolean; all: boolean },
): number | null {
  const { plan, position } = scene;
  const own = ownDue(position, pair);
  const outside = pair[0] >= plan.up.length || pair[1] >= plan.across.length;
  if (own !== null || !(ends.all || (outside && ends.row))) return own;
  return value === trueDue(plan, pair) ? value : 0;
}

function factsOf(scene: Scene, moment: Moment, row: number, entries: readonly Entry[]): Fact[] {
  const final = row < scene.plan.up.length ? isFinal(scene, moment, row) : isOver(moment);
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
    written[entry.pair[1]] = { ...written[entry.pair[1]], [entry.part]: entry };
  }
  const width = Math.max(scene.plan.across.length, tilesWide(scene), written.length);
  const inside = Array.from({ length: width }, (_, column): Fact => {
    const pair: Square = [row, column];
    const own = written[column] ?? {};
    return {
      pair,
      due: dueOf(scene, pair, writtenValue(own), { row: final, all: isOver(moment) }),
      written: own,
      covered: covered[column] ?? [],
      final,
    };
  });
  return [...outside, ...inside];
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
  const facts: Fact[] = [];
  const astray: Entry[] = [];
  const turned: boolean[] = [];
  const ways = [false, true].map((swapped) => entriesByRow(scene, swapped));
  for (let row = 0; row < scene.plan.rows; row += 1) {
    const usual = readWay(scene, moment, row, ways[0]![row]!);
    const other = usual.amiss > 0 ? readWay(scene, moment, row, ways[1]![row]!) : usual;
    // Where both read equally well, the row is read on as it was read so far.
    const swapped =
      other.amiss < usual.amiss || (other.amiss === usual.amiss && other.kept > usual.kept);
    const best = swapped ? other : usual;
    facts.push(...best.found);
    astray.push(...best.lost);
    turned.push(swapped);
  }
  return { facts, astray, swapped: turned };
}

function readWay(scene: Scene, moment: Moment, row: number, entries: readonly Entry[]) {
  const found = factsOf(scene, moment, row, entries);
  const lost = entries.filter(isAstray);
  // A digit that names another pair than its slot's speaks for the other way more than a wrong one.
  return { found, lost, amiss: 2 * lost.length + amissIn(found), kept: keptIn(scene, found) };
}

/** How many digits stand that were right when they were written. */
function keptIn({ ledger }: Scene, facts: readonly Fact[]): number {
  return facts.reduce((sum, { pair, written }) => {
    const kept = PARTS.filter((part) => {
      const given = written[part]?.digit;
      return given !== undefined && ledger.latched[latchKey(pair, part)]?.given === given;
    });
    return sum + kept.length;
  }, 0);
}

/** What was right in a slot of a fact when it was written is remembered under this key. */
export function latchKey([row, column]: Square, part: Part): string {
  return `fact:${row}:${column} ${part}`;
}

/** Units where the tens belong and the other way round. */
export function isTurned({ due, written }: Fact): boolean {
  if (due === null || due === 0 || due % 11 === 0) return false;
  const { units, tens } = written;
  return 10 * (units?.digit ?? 0) + (tens?.digit ?? 0) === due;
}

/** A digit that would come from beyond the last column speaks for the other way more than a wrong one. */
function amissIn(facts: readonly Fact[]): number {
  return facts.reduce((sum, fact) => {
    const written = PARTS.filter((part) => fact.written[part] !== undefined);
    if (fact.pair[1] < 0) return sum + 2 * written.length;
    if (fact.due === null) return sum + written.length;
    if (isTurned(fact)) return sum + 1;
    const wrong = PARTS.filter((part) => !isRight(fact, part));
    return sum + wrong.filter((part) => fact.final || written.includes(part)).length;
  }, 0);
}
