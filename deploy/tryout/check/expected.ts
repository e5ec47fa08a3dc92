/**
 * What the check expects, worked out by arithmetic alone: how many steps a problem has (the list of the mat's rules,
 * stages bars1 and bars), and what the whole is worth when one of them was put right after a slip.
 */
const digitsOf = (numeral: string): number[] => [...numeral].reverse().map(Number);

/** tile, laid, counted, said, slid, settled and read, one after the other; numbers without zeros. */
export const stepCount = (multiplicand: string, multiplier: string): number => {
  const below = digitsOf(multiplicand);
  const side = digitsOf(multiplier);
  const places = `${BigInt(multiplicand) * BigInt(multiplier)}`.length;
  const tiles = below.length + side.length;
  const laid = below.length * side.length;
  const counted = below.length * side.filter((digit) => digit >= 2).length;
  const said = side.length;
  const slid = side.length - 1;
  const settled = places;
  const read = places;
  return tiles + laid + counted + said + slid + settled + read;
};

/** A step put right after a slip is worth 0.6 of one right at once. In hundredths of a point, rounded half up. */
const hundredths = (steps: number, corrected: number, points: number): bigint => {
  const tenths = BigInt(10 * steps - 4 * corrected);
  return (tenths * BigInt(points) * 200n + BigInt(10 * steps)) / BigInt(20 * steps);
};

export const expectedScore = (steps: number, corrected: number, points: number): number =>
  Number(hundredths(steps, corrected, points)) / 100;
