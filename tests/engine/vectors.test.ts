import { Decimal } from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { parseProblem, worked } from '../../engine/index.ts';
import { matValue } from '../../engine/mat/position.ts';
import vectors from '../golden/vectors.json' with { type: 'json' };
import { actionsOf, isFull, play, problemOf } from './play.ts';

/** Published products, each with its source in its row. */
const digitsIn = (text: string): number => text.replace('.', '').replace(/^0+(?=\d)/, '').length;

const holds = (row: (typeof vectors)[number]): boolean =>
  digitsIn(row.multiplier) <= 6 && digitsIn(row.multiplicand) + digitsIn(row.multiplier) <= 13;

describe('published products', () => {
  it.each(vectors.filter(holds))('$id $multiplicand × $multiplier ($source)', (row) => {
    const numbers = { multiplicand: row.multiplicand, multiplier: row.multiplier };
    const problem = problemOf(numbers);
    const actions = worked(problem).map(({ action }) => action);
    const work = play(numbers, actionsOf(JSON.parse(JSON.stringify(actions))));
    expect(isFull(work) && work.complete).toBe(true);
    const shown = new Decimal(`${matValue(work.position)}e${problem.mat.origin}`);
    expect(shown.equals(row.product)).toBe(true);
    const said = problem.multiplier.digits.map((_, index) => work.position.said.rows[index]);
    const rows = row.row_products_units_first.map(
      (value, index) => new Decimal(`${value}e${problem.mat.origin + index}`),
    );
    for (const [index, value] of rows.entries()) {
      expect(value.equals(said[index] ?? 'NaN')).toBe(true);
    }
  });

  it.each(vectors.filter((row) => !holds(row)))('$id needs a larger mat than there is', (row) => {
    const parsed = parseProblem({
      stage: 'bars',
      multiplicand: row.multiplicand,
      multiplier: row.multiplier,
    });
    expect(parsed).toMatchObject({
      ok: false,
      fault: {
        code: 'doesNotFit',
        rows: digitsIn(row.multiplier),
        columns: digitsIn(row.multiplicand) + digitsIn(row.multiplier),
      },
    });
  });
});
