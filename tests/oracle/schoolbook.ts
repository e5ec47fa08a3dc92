/** Long multiplication over digits, lowest first, as learned at school: shares nothing with the engine. */
export function timesDigit(across: readonly number[], digit: number): number[] {
  const row: number[] = [];
  let carry = 0;
  for (const each of across) {
    const made = each * digit + carry;
    row.push(made % 10);
    carry = (made - (made % 10)) / 10;
  }
  if (carry > 0) row.push(carry);
  return withoutFrontZeros(row);
}

export function product(across: readonly number[], up: readonly number[]): number[] {
  const sums = columnSums(across, up);
  for (let place = 0; place + 1 < sums.length; place += 1) {
    sums[place + 1]! += Math.floor(sums[place]! / 10);
    sums[place]! %= 10;
  }
  return withoutFrontZeros(sums);
}

/** The carry into each column when columns with these sums are carried from the right. */
export function carriesInto(sums: readonly number[]): number[] {
  const carries = [0];
  for (const [column, sum] of sums.entries()) {
    carries.push(Math.floor((sum + carries[column]!) / 10));
  }
  return carries;
}

/** What the diagonals add up to when every fact's units and tens stand on their squares. */
export function diagonalSums(across: readonly number[], up: readonly number[]): number[] {
  const sums = Array.from({ length: across.length + up.length }, () => 0);
  for (const [row, digit] of up.entries())
    for (const [column, each] of across.entries()) {
      sums[row + column]! += (each * digit) % 10;
      sums[row + column + 1]! += Math.floor((each * digit) / 10);
    }
  return sums;
}

/** What the columns add up to when every row is written at its place. */
export function columnSums(across: readonly number[], up: readonly number[]): number[] {
  const sums = Array.from({ length: across.length + up.length }, () => 0);
  for (const [row, digit] of up.entries()) {
    for (const [column, each] of timesDigit(across, digit).entries()) sums[row + column]! += each;
  }
  return sums;
}

function withoutFrontZeros(digits: readonly number[]): number[] {
  let length = digits.length;
  while (length > 1 && digits[length - 1] === 0) length -= 1;
  return digits.slice(0, length);
}

/** Digits from the lowest place up, written with a point: ([5, 2], −1) is "2.5". */
export function numberText(digits: readonly number[], lowest: number): string {
  const text = [...digits]
    .reverse()
    .join('')
    .padStart(1 - lowest, '0');
  if (lowest === 0) return text.replace(/^0+(?=\d)/, '');
  const point = text.length + lowest;
  const whole = text.slice(0, point).replace(/^0+(?=\d)/, '');
  const decimals = text.slice(point).replace(/0+$/, '');
  return decimals === '' ? whole : `${whole}.${decimals}`;
}
