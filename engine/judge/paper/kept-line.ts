import type { KeptLine, Ledger, Plan, Scene } from '../scene.ts';
import type { ColumnRead } from './carrying.ts';
import type { LineReading, LineSpec } from './line-reading.ts';
import { placed } from './pens.ts';

/** What reads right now stays right, whatever is written elsewhere later. */
export function withLatches(scene: Scene, reading: LineReading): Ledger {
  const { ledger, plan } = scene;
  const way = wayOf(reading.spec, reading.shift);
  const kept = keptLines(scene, reading.spec);
  const before = kept?.[way] ?? NOTHING_KEPT;
  const after = keptOf(reading, before);
  if (after === before) return ledger;
  const lines = placed(ledger.lines, memoryOf(plan, reading.spec.row), { ...kept, [way]: after });
  return { ...ledger, lines };
}

/** Where in `Ledger.lines` a row has its place; the sum (−1) comes after the last row. */
export function memoryOf(plan: Plan, row: number): number {
  return row < 0 ? plan.rows : row;
}

export function keptLines({ plan, ledger }: Scene, { row }: LineSpec) {
  return ledger.lines[memoryOf(plan, row)];
}

/** What was right at one shift is not so at another. */
export function wayOf({ name }: LineSpec, shift: number): string {
  return shift === 0 ? name : `${name}@${shift}`;
}

const NOTHING_KEPT: KeptLine = { digits: [], carries: {}, end: 0 };

function keptOf({ spec, shift, carried, reads }: LineReading, before: KeptLine): KeptLine {
  let digits = before.digits;
  let carries = before.carries[carried] ?? [];
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
  const sameCarries = carries === before.carries[carried] || carries.length === 0;
  if (digits === before.digits && sameCarries && end === before.end) return before;
  return {
    digits,
    carries: sameCarries ? before.carries : { ...before.carries, [carried]: carries },
    end,
  };
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
