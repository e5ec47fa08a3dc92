import { withPaper } from '../changes.ts';
import { placed } from '../ledger.ts';
import type { KeptLine, Ledger, Scene } from '../scene.ts';
import { type ColumnRead, stayed } from './carrying.ts';
import type { Columns } from './columns.ts';
import type { LineReading, LineSpec } from './line-reading.ts';

/** What reads right now stays right, whatever is written elsewhere later. */
export function withLatches(scene: Scene, reading: LineReading): Ledger {
  const { ledger } = scene;
  const way = wayOf(reading.spec, reading.shift);
  const kept = keptLines(scene, reading.spec);
  const before = kept === undefined ? undefined : keptIn(kept, way);
  const after = keptOf(reading, way, before ?? NOTHING_KEPT);
  if (after === (before ?? NOTHING_KEPT)) return ledger;
  const others =
    kept === undefined || kept.length < 2 ? NONE : kept.filter((each) => each !== before);
  const more = before === undefined && kept !== undefined ? [...kept, after] : [...others, after];
  if (reading.spec.row < 0) return withPaper(ledger, { sumLine: more });
  return withPaper(ledger, { lines: placed(ledger.lines, reading.spec.row, more) });
}

const NONE: readonly KeptLine[] = [];

/**
 * Whether a line reads as it did now that what was right in it is remembered: each digit and carry that was right is
 * so again and hands on the same; only a whole line of before that stands again would read on otherwise, and other
 * columns it may be read from (`first`: the first of them) might now fit as well.
 */
export function isSteady(
  lines: readonly KeptLine[],
  { spec, shift, written, faults }: LineReading,
  { first, count }: { readonly first: Columns; readonly count: number },
): boolean {
  if (count > 1 && (spec.columns !== first || faults.length > 0)) return false;
  const after = keptIn(lines, wayOf(spec, shift));
  const end =
    after !== undefined && isWhole(after, written.digits, written.from) ? after.end : null;
  return end === written.ended;
}

/** Whether all digits that made the whole line still stand. */
export function isWhole(
  kept: KeptLine,
  digits: readonly (number | undefined)[],
  from: number,
): boolean {
  for (let column = 0; column < kept.end; column += 1) {
    if (stayed(kept, digits, from + column) === null) return false;
  }
  return kept.end > 0;
}

/** What was right in the line as it is read this way. */
export function keptIn(lines: readonly KeptLine[], way: string): KeptLine | undefined {
  for (let index = 0; index < lines.length; index += 1) {
    if (lines[index]!.way === way) return lines[index];
  }
  return undefined;
}

export function keptLines({ ledger }: Scene, { row }: LineSpec): readonly KeptLine[] | undefined {
  return row < 0 ? ledger.sumLine : ledger.lines[row];
}

/** What was right at one shift is not so at another. */
export function wayOf({ name }: LineSpec, shift: number): string {
  return shift === 0 ? name : `${name}@${shift}`;
}

const NOTHING_KEPT: KeptLine = { way: '', digits: [], carries: [], moved: [], end: 0 };
const NO_CARRIES: readonly (number | undefined)[] = [];

/** The carries that were right so far to the left. */
export function carriesKept({ carries, moved }: KeptLine, carried: number) {
  return carried === 0
    ? carries
    : (moved.find((each) => each.by === carried)?.carries ?? NO_CARRIES);
}

function keptOf(
  { spec, shift, carried, reads }: LineReading,
  way: string,
  before: KeptLine,
): KeptLine {
  const carriesBefore = carriesKept(before, carried);
  let digits = before.digits;
  let carries = carriesBefore;
  for (let column = 0; column < reads.length; column += 1) {
    const { mark, given, carry, noted, hands } = reads[column]!;
    const at = spec.lowest + column + shift;
    if (mark === 'right' && carry !== 'wrong' && given !== null) {
      const known = digits[at];
      if (known === undefined || known.given !== given || known.hands !== hands)
        digits = placed(digits, at, { given, hands });
    }
    const over = spec.lowest + column + carried;
    if (carry === 'right' && noted !== null && carries[over] !== noted)
      carries = placed(carries, over, noted);
  }
  const end = endOf(spec, reads) ?? before.end;
  const same = carries === carriesBefore;
  if (digits === before.digits && same && end === before.end) return before;
  if (same || carried === 0)
    return {
      way,
      digits,
      carries: carried === 0 ? carries : before.carries,
      moved: before.moved,
      end,
    };
  const moved = [...before.moved.filter(({ by }) => by !== carried), { by: carried, carries }];
  return { way, digits, carries: before.carries, moved, end };
}

/** How many digits make the whole line, all of them right; null: it is not whole. */
function endOf({ columns }: LineSpec, reads: readonly ColumnRead[]): number | null {
  let digits = 0;
  while (reads[digits]?.mark === 'right') digits += 1;
  if (digits === 0 || digits < columns.needed) return null;
  for (let above = digits; above < reads.length; above += 1) {
    if (reads[above]!.mark !== 'absent') return null;
  }
  return hasNoCarry(reads[digits - 1]) ? digits : null;
}

function hasNoCarry(last: ColumnRead | undefined): boolean {
  return last !== undefined && (last.hands & 1) === 1;
}
