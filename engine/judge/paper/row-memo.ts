import { MAT_LIMITS } from '../../mat/geometry.ts';
import { FIRST_CARRIES, PRODUCT_CARRIES } from '../../mat/sheet.ts';
import { kept, recalled, slots } from '../memo.ts';
import type { Ledger, Scene } from '../scene.ts';
import type { Columns } from './columns.ts';
import type { LineReading } from './line-reading.ts';
import { carriesOf, NO_LINE, type RowLine } from './lines.ts';
import { pensOf } from './pens.ts';

/** A row that is still being written, or is finished. */
const READINGS = slots(2 * MAT_LIMITS.rows.most);

/** One row has its carries on its own line of them or on the product's. */
export const SINGLE_CARRIES: readonly number[] = [FIRST_CARRIES, PRODUCT_CARRIES];

/** How the row read last, if nothing that decides it has changed since. */
export function rowRead(
  { plan, memo, position, ledger, claims }: Scene,
  final: boolean,
  found: RowLine,
  columns: readonly Columns[],
  ready: boolean,
): LineReading | undefined {
  const { lines } = position.paper;
  const { row, line } = found;
  const single = plan.up.length === 1;
  const carry = single ? FIRST_CARRIES : line === NO_LINE ? NO_LINE : carriesOf(line);
  return recalled(
    memo,
    READINGS + 2 * row + (final ? 1 : 0),
    found,
    columns,
    ready,
    ledger.onPaper.lines[row],
    claims,
    line === NO_LINE ? undefined : lines[line],
    pensOf(ledger, line),
    carry === NO_LINE ? undefined : lines[carry],
    pensOf(ledger, carry),
    single ? lines[PRODUCT_CARRIES] : undefined,
    single ? ledger.onPaper.sumPens : undefined,
  );
}

/** Remembers how the row reads, and all that decides it; `latched`: the ledger with what was right in it before. */
export function keepRow(
  { plan, memo, position, ledger, claims }: Scene,
  latched: Ledger,
  final: boolean,
  found: RowLine,
  columns: readonly Columns[],
  ready: boolean,
  reading: LineReading,
): LineReading {
  const { lines } = position.paper;
  const { row, line } = found;
  const single = plan.up.length === 1;
  const carry = single ? FIRST_CARRIES : line === NO_LINE ? NO_LINE : carriesOf(line);
  return kept(
    memo,
    READINGS + 2 * row + (final ? 1 : 0),
    reading,
    found,
    columns,
    ready,
    latched.onPaper.lines[row],
    claims,
    line === NO_LINE ? undefined : lines[line],
    pensOf(ledger, line),
    carry === NO_LINE ? undefined : lines[carry],
    pensOf(ledger, carry),
    single ? lines[PRODUCT_CARRIES] : undefined,
    single ? ledger.onPaper.sumPens : undefined,
  );
}
