import { type Problem, parseProblem, type Suggestion, worked } from '../index.ts';
import { amountOf, amountText } from '../numerals/numeral.ts';
import { faultText, readArguments, stop } from './arguments.ts';

const USAGE = 'Usage: npm run -s worked -- MULTIPLICAND MULTIPLIER [--stage STAGE] [--json]';

function problemOf(words: readonly string[], stage: string): Problem {
  if (words.length !== 2) stop(USAGE, 2);
  const [multiplicand, multiplier] = words;
  // Decimals belong to the numbers; the word is taken for the stage at which they are worked in bars.
  const parsed = parseProblem({
    stage: stage === 'decimal' ? 'bars' : stage,
    multiplicand,
    multiplier,
  });
  return parsed.ok ? parsed.value : stop(faultText(parsed.fault), 1);
}

/** The shape documented for `worked --json`: numbers as strings, partials units row first. */
function described(problem: Problem, moves: readonly Suggestion[]): Record<string, unknown> {
  const { multiplicand, multiplier, mat, stage } = problem;
  const amount = amountOf(multiplicand);
  return {
    multiplicand: multiplicand.text,
    multiplier: multiplier.text,
    product: amountText(amount * amountOf(multiplier), mat.origin),
    stage,
    mat: { rows: mat.rows, columns: mat.columns, origin: mat.origin },
    partials: multiplier.digits.map((digit, row) => ({
      row,
      digit,
      value: amountText(amount * BigInt(digit) * 10n ** BigInt(row), mat.origin),
    })),
    squares: squaresOf(problem),
    exchanges: moves.filter(({ action }) => action.do === 'exchange').length,
    actions: moves.map(({ action }) => action),
  };
}

function squaresOf({ multiplicand, multiplier, mat }: Problem): Record<string, number>[] {
  return multiplier.digits.flatMap((count, row) =>
    multiplicand.digits.flatMap((kind, column) =>
      kind * count === 0
        ? []
        : [{ row, column, place: mat.origin + row + column, fact: kind * count, kind, count }],
    ),
  );
}

function inWords({ action, say }: Suggestion, index: number): string {
  const { do: name, ...fields } = action;
  return `${String(index + 1).padStart(3)}  ${name} ${JSON.stringify(fields)}  ${say.key}`;
}

const { words, options } = readArguments(
  process.argv.slice(2),
  { flags: ['json'], options: ['stage'] },
  USAGE,
);
const problem = problemOf(words, typeof options['stage'] === 'string' ? options['stage'] : 'bars');
const moves = worked(problem);
const facts = described(problem, moves);
if (options['json'] === true) process.stdout.write(`${JSON.stringify(facts)}\n`);
else {
  const { multiplicand, multiplier, product, mat, exchanges } = facts;
  const { rows, columns } = mat as { rows: number; columns: number };
  process.stdout.write(
    [
      `${multiplicand} × ${multiplier} = ${product}  (${problem.stage}, mat ${rows} × ${columns}, exchanges ${exchanges})`,
      ...moves.map(inWords),
      '',
    ].join('\n'),
  );
}
