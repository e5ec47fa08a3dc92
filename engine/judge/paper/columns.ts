/** What a line of digits has at one place before anything is carried in. */
export interface Column {
  readonly base: number;
  /** The largest value that a column like this can have, with what can be carried in. */
  readonly most: number;
}

/** The columns of a line from its own lowest place up. */
export interface Columns {
  readonly list: readonly Column[];
  /** So many columns, from the lowest, cannot stay without a digit. */
  readonly needed: number;
  /** Each digit hands something on to the next; false: the digits are copied from elsewhere. */
  readonly carrying: boolean;
}

/** Above all columns there is only what is carried. */
export function beyond({ list }: Columns, column: number): Column {
  let most = list.at(-1)?.most ?? 0;
  for (let above = list.length; above <= column; above += 1) most = Math.floor(most / 10);
  return { base: 0, most };
}

const NOTHING_DUE: Columns = { list: [], needed: 0, carrying: true };

/** A number times one digit: a column has at most ten times the digit less one (9 × b and a carry of b − 1). */
export function productColumns(across: readonly number[], digit: number): Columns {
  const bases = across.map((each) => each * digit);
  if (bases.every((base) => base === 0)) return NOTHING_DUE;
  const list = bases.map((base) => ({ base, most: 10 * digit - 1 }));
  return { list, needed: list.length, carrying: true };
}

/** Digits that are read from the mat, nothing carried. */
export function copiedColumns(digits: readonly number[]): Columns {
  const list = digits.map((base) => ({ base, most: 9 }));
  const highest = digits.findLastIndex((digit) => digit > 0);
  return { list, needed: highest + 1, carrying: false };
}

/** Digits that stand under each other are added; `reaching`: how many of them a place could have. */
export function sumColumns(
  sums: readonly { readonly base: number; readonly reaching: number }[],
): Columns {
  const list: Column[] = [];
  let most = 0;
  let highest = -1;
  for (let place = 0; place < sums.length; place += 1) {
    const { base, reaching } = sums[place]!;
    most = 9 * reaching + Math.floor(most / 10);
    list.push({ base, most });
    if (base > 0) highest = place;
  }
  const written = sums.some(({ reaching }) => reaching > 0);
  return { list, needed: highest < 0 && written ? 1 : highest + 1, carrying: true };
}

/** The one line that answers the problem has a digit even where it makes nothing. */
export function atLeastOne(columns: Columns): Columns {
  if (columns.needed > 0) return columns;
  const [lowest = { base: 0, most: 9 }, ...others] = columns.list;
  return { list: [lowest, ...others], needed: 1, carrying: columns.carrying };
}
