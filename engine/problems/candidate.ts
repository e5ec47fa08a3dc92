import { fits, sizeNeeded } from '../mat/geometry.ts';
import { digitsOf, exchangesOfRow, pilesOfRow } from './digits.ts';
import { holdsFact } from './fact-set.ts';
import { within } from './range.ts';
import type { Clause } from './specification.ts';
import { zerosAgree } from './zeros.ts';

/** Two numbers by the digits that are laid; their points stand elsewhere and change no digit. */
export interface Candidate {
  readonly multiplicand: number;
  readonly multiplier: number;
}

/** Whether a candidate satisfies one clause, decided on its digits alone. */
export function satisfies(candidate: Candidate, clause: Clause): boolean {
  const bottom = digitsOf(candidate.multiplicand);
  const right = digitsOf(candidate.multiplier);
  switch (clause.kind) {
    case 'stage':
      return rowsSuit(clause.stage, right.length);
    case 'digits':
      return within((clause.of === 'multiplicand' ? bottom : right).length, clause.range);
    case 'zeros':
      return zerosAgree(clause.zeros, clause.of === 'multiplicand' ? bottom : right);
    case 'decimals':
      return true;
    case 'exchanges': {
      const rows = clause.row === 'every' ? right : [right[clause.row]];
      return rows.every(
        (digit) => digit !== undefined && within(exchangesOfRow(bottom, digit), clause.range),
      );
    }
    case 'largestPile':
      return within(Math.max(...right.flatMap((digit) => pilesOfRow(bottom, digit))), clause.range);
    case 'allowed':
      return factsOf(bottom, right).every(([a, b]) => holdsFact(clause.facts, a, b));
    case 'required':
      return factsOf(bottom, right).some(([a, b]) => holdsFact(clause.facts, a, b));
    case 'avoided':
      return !factsOf(bottom, right).some(([a, b]) => holdsFact(clause.facts, a, b));
    case 'productDigits':
      return within(String(candidate.multiplicand * candidate.multiplier).length, clause.range);
    case 'mat':
      return fits(clause, sizeNeeded(bottom.length, right.length));
  }
}

export const rowsSuit = (stage: string, rows: number): boolean =>
  stage === 'bars1' ? rows === 1 : stage === 'bars' ? rows > 1 : stage !== 'walk';

const factsOf = (bottom: readonly number[], right: readonly number[]): [number, number][] =>
  bottom.flatMap((a) => right.map((b): [number, number] => [a, b])).filter(([a, b]) => a && b);
