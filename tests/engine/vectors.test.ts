import { Decimal } from 'decimal.js';
import { describe, expect, it } from 'vitest';
import { parseProblem, replay, STAGES, type Stage, type Work, worked } from '../../engine/index.ts';
import { matValue } from '../../engine/mat/position.ts';
import vectors from '../golden/vectors.json' with { type: 'json' };
import { faultIn } from './check-cases.ts';
import { actionsOf, problemOf } from './play.ts';

/** Published products, each with its source in its row. */
type Row = (typeof vectors)[number];

const digitsIn = (text: string): number => text.replace('.', '').replace(/^0+(?=\d)/, '').length;

const fits = (row: Row): boolean =>
  digitsIn(row.multiplier) <= 6 && digitsIn(row.multiplicand) + digitsIn(row.multiplier) <= 13;

const heldBy = (stage: Stage): Row[] =>
  vectors.filter((row) => fits(row) && (stage !== 'bars1' || digitsIn(row.multiplier) === 1));

const NUMBERED = STAGES.filter((stage) => stage !== 'walk');
const WITH_BARS: readonly Stage[] = ['bars1', 'bars', 'facts', 'record', 'open'];

const numbersOf = ({ multiplicand, multiplier }: Row) => ({ multiplicand, multiplier });

function amountOn(digits: Readonly<Record<string, number>> | undefined): Decimal {
  return Object.entries(digits ?? {}).reduce(
    (sum, [place, digit]) => sum.plus(new Decimal(10).pow(place).times(digit)),
    new Decimal(0),
  );
}

/** A row's partial product as it was said, or as it stands on the line that was begun for it. */
function partialOf({ position: { said, paper } }: Work, row: number): Decimal {
  if (said.rows[row] !== undefined) return new Decimal(said.rows[row]);
  const line = Object.keys(paper.begun).find((each) => paper.begun[each] === row);
  return amountOn(line === undefined ? undefined : paper.lines[line]);
}

/** Where rows are said or written one by one: a single written row is the product. */
const hasPartials = (stage: Stage, row: Row): boolean =>
  ['record', 'paper'].includes(stage) ? digitsIn(row.multiplier) > 1 : stage !== 'cells';

describe.each(NUMBERED)('published products at %s', (stage) => {
  it.each(heldBy(stage))('$id $multiplicand × $multiplier ($source)', (row) => {
    const problem = problemOf({ stage, ...numbersOf(row) });
    expect(faultIn(problem)).toBeNull();
    if (stage === 'build') return;
    const actions = worked(problem).map(({ action }) => action);
    const work = replay(problem, actionsOf(JSON.parse(JSON.stringify(actions))));
    const { paper } = work.position;
    expect(amountOn(paper.lines['product']).equals(row.product)).toBe(true);
    if (WITH_BARS.includes(stage)) {
      const shown = new Decimal(`${matValue(work.position)}e${problem.mat.origin}`);
      expect(shown.equals(row.product)).toBe(true);
    }
    if (!hasPartials(stage, row)) return;
    for (const [index, value] of row.row_products_units_first.entries()) {
      const due = new Decimal(`${value}e${problem.mat.origin + index}`);
      expect(partialOf(work, index).equals(due), `row ${index}`).toBe(true);
    }
  });
});

describe('numbers that need a larger mat than there is', () => {
  it.each(vectors.filter((row) => !fits(row)))('$id is refused with the size', (row) => {
    expect(parseProblem({ stage: 'bars', ...numbersOf(row) })).toMatchObject({
      ok: false,
      fault: {
        code: 'doesNotFit',
        rows: digitsIn(row.multiplier),
        columns: digitsIn(row.multiplicand) + digitsIn(row.multiplier),
      },
    });
  });
});
