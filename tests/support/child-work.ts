/**
 * A child's whole work on one problem of whole numbers, worked out by schoolbook arithmetic alone: nothing of the
 * engine is used, so that what the tool makes of it can be checked from outside. Actions in the wire form.
 */
export type ChildAction =
  | { do: 'layTile'; edge: 'bottom' | 'right'; index: number; digit: number }
  | { do: 'layBars'; square: [number, number]; kind: number; count: number }
  | { do: 'count'; square: [number, number]; total: number }
  | { do: 'exchange'; from: [number, number]; tens: number; to: [number, number]; ones: number }
  | { do: 'slide'; from: [number, number]; to: [number, number] }
  | { do: 'say'; row: number; answer: string }
  | { do: 'write'; line: 'product'; place: number; digit: number }
  | { do: 'check' }
  | { do: 'undo' }
  | { do: 'finish'; what: `row:${number}` | 'product' | 'problem' };

/** A wrong first count at this square, noticed at a check, taken back and counted rightly: the slip costs once. */
export type Slip = [row: number, column: number] | null;

const digitsOf = (numeral: string): number[] => [...numeral].reverse().map(Number);

const tiles = (edge: 'bottom' | 'right', digits: readonly number[]): ChildAction[] =>
  digits.map((digit, index) => ({ do: 'layTile', edge, index, digit }));

const counting = (square: [number, number], total: number, slip: Slip): ChildAction[] => {
  const right: ChildAction = { do: 'count', square, total };
  const slips = slip?.[0] === square[0] && slip[1] === square[1];
  return slips ? [{ ...right, total: total + 1 }, { do: 'check' }, { do: 'undo' }, right] : [right];
};

const laid = (row: number, digits: readonly number[], times: number): ChildAction[] =>
  digits.flatMap((kind, column): ChildAction[] =>
    kind * times === 0 ? [] : [{ do: 'layBars', square: [row, column], kind, count: times }],
  );

/** Counts and exchanges a row from the right; `piles` holds what lies on it by column. */
const exchanged = (row: number, piles: number[], own: number, slip: Slip): ChildAction[] => {
  const actions: ChildAction[] = [];
  for (let column = 0; column < piles.length; column += 1) {
    const total = piles[column] ?? 0;
    const needsCount = total >= 10 || (column < own && total > 0);
    if (needsCount) actions.push(...counting([row, column], total, slip));
    const tens = Math.floor(total / 10);
    if (tens === 0) continue;
    const to: [number, number] = [row, column + 1];
    actions.push({ do: 'exchange', from: [row, column], tens, to, ones: tens });
    piles[column] = total % 10;
    piles[column + 1] = (piles[column + 1] ?? 0) + tens;
  }
  return actions;
};

const oneRow = (row: number, multiplicand: string, times: number, slip: Slip) => {
  const digits = digitsOf(multiplicand);
  const piles = digits.map((digit) => digit * times);
  const zeros = '0'.repeat(row);
  const actions: ChildAction[] = [
    ...laid(row, digits, times),
    ...exchanged(row, piles, times > 1 ? digits.length : 0, slip),
    {
      do: 'say',
      row,
      answer: `${BigInt(multiplicand) * BigInt(times)}${times === 0 ? '' : zeros}`,
    },
    { do: 'finish', what: `row:${row}` },
  ];
  return { actions, piles };
};

const slides = (row: number, piles: readonly number[]): ChildAction[] =>
  row === 0
    ? []
    : piles.flatMap((total, column): ChildAction[] =>
        total === 0 ? [] : [{ do: 'slide', from: [row, column], to: [0, row + column] }],
      );

export const childWork = (
  multiplicand: string,
  multiplier: string,
  slip: Slip = null,
): ChildAction[] => {
  const digits = digitsOf(multiplier);
  const rows = digits.map((times, row) => oneRow(row, multiplicand, times, slip));
  const bottom: number[] = [];
  for (const [row, { piles }] of rows.entries()) {
    for (const [column, total] of piles.entries()) {
      bottom[row + column] = (bottom[row + column] ?? 0) + total;
    }
  }
  const product = digitsOf(`${BigInt(multiplicand) * BigInt(multiplier)}`);
  return [
    ...tiles('bottom', digitsOf(multiplicand)),
    ...tiles('right', digits),
    ...rows.flatMap(({ actions }) => actions),
    ...rows.flatMap(({ piles }, row) => slides(row, piles)),
    ...(rows.length > 1 ? exchanged(0, bottom, 0, null) : []),
    ...product.map((digit, place): ChildAction => ({ do: 'write', line: 'product', place, digit })),
    { do: 'finish', what: 'product' },
    { do: 'finish', what: 'problem' },
  ];
};
