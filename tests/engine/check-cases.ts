import {
  type Action,
  type Problem,
  parseProblem,
  replay,
  STAGES,
  score,
  type Work,
  worked,
} from '../../engine/index.ts';
import { Beads, type Told } from '../oracle/beads.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import {
  carriesInto,
  columnSums,
  diagonalSums,
  numberText,
  product,
  timesDigit,
} from '../oracle/schoolbook.ts';
import { randomNumber } from './random.ts';

const NUMBERED = STAGES.filter((stage) => stage !== 'walk');

function randomProblem(chance: Chance): Problem {
  const stage = chance.pick(NUMBERED);
  const multiplicand = randomNumber(chance, 1 + chance.below(4));
  const multiplier =
    stage === 'bars1' ? `${chance.below(10)}` : randomNumber(chance, 1 + chance.below(3));
  const parsed = parseProblem({ stage, multiplicand, multiplier });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

/** What the step's due is by schoolbook arithmetic and real beads; undefined where the judge leaves it open. */
function dueOf(
  problem: Problem,
  beads: Beads,
  action: Action,
  step: string,
): number | string | undefined {
  const { multiplicand, multiplier, mat, stage } = problem;
  const [kind = '', first = '', second = ''] = step.split(':');
  const [row, column] = [Number(first), Number(second)];
  const fact = (multiplicand.digits[column] ?? 0) * (multiplier.digits[row] ?? 0);
  if (kind === 'tile') return (first === 'right' ? multiplier : multiplicand).digits[column];
  if (action.do === 'count') return beads.value([...action.square]);
  if (kind === 'laid' || (kind === 'fact' && stage !== 'cells')) return fact;
  if (kind === 'said') {
    return numberText(
      [
        ...Array.from({ length: row }, () => 0),
        ...timesDigit(multiplicand.digits, multiplier.digits[row]!),
      ],
      mat.origin,
    );
  }
  if (action.do === 'write' && 'line' in action && action.line.startsWith('carry')) {
    return carryDue(problem, kind === 'row' ? row : null, action.place - mat.origin);
  }
  if (kind === 'read' || kind === 'sum')
    return product(multiplicand.digits, multiplier.digits)[row - mat.origin] ?? 0;
  if (kind === 'row')
    return timesDigit(multiplicand.digits, multiplier.digits[row]!)[column - mat.origin - row] ?? 0;
  if (kind === 'zero') return 0;
  return undefined;
}

/** The carry into a column: of a row's multiplication, or (null) of the sum. */
function carryDue(
  { multiplicand, multiplier, stage }: Problem,
  row: number | null,
  index: number,
): number {
  const { digits } = multiplicand;
  if (row !== null) {
    const made = digits.map((digit) => digit * multiplier.digits[row]!);
    return carriesInto(made)[index - row] ?? 0;
  }
  const sums = stage === 'cells' ? diagonalSums : columnSums;
  return carriesInto(sums(digits, multiplier.digits))[index] ?? 0;
}

/** What is wrong with the engine's work on a problem; null: nothing. */
export function faultIn(problem: Problem): string | null {
  const actions = worked(problem).map(({ action }) => action);
  const work = replay(problem, actions);
  const { num, den } = score([work]).fraction;
  if (num !== den || !work.complete) return `presentation earns ${num}/${den}`;
  return dueFault(problem, actions, work) ?? resultFault(problem, work);
}

function dueFault(problem: Problem, actions: readonly Action[], work: Work): string | null {
  const beads = new Beads(problem.mat.rows, problem.mat.columns);
  let next = 0;
  for (const judgement of work.judgements) {
    for (; next < judgement.action; next += 1) beads.take(actions[next] as unknown as Told);
    const due = dueOf(problem, beads, actions[judgement.action]!, judgement.step);
    const neutral = judgement.verdict === 'neutral' || judgement.due === null;
    if (due !== undefined && !neutral && `${due}` !== `${judgement.due}`) {
      return `${judgement.step} due ${judgement.due}, by schoolbook ${due}`;
    }
  }
  return null;
}

function resultFault({ multiplicand, multiplier, mat, stage }: Problem, work: Work): string | null {
  if (stage === 'build') return null;
  const due = product(multiplicand.digits, multiplier.digits);
  const { lines } = work.position.paper;
  const line = lines['product'] ?? lines['partial:0'] ?? {};
  for (const [index, digit] of due.entries()) {
    const place = mat.origin + index;
    const written = line[place];
    const leftOut =
      written === undefined && place < 0 && due.slice(0, index + 1).every((each) => each === 0);
    if (written !== digit && !leftOut)
      return `product digit ${written} at ${place}, by schoolbook ${digit}`;
  }
  return null;
}

/** Cases are drawn in blocks, each from a seed of its own, so that any number of processes can share them. */
export const BLOCK = 1_000;

/** Random problems, each at one stage drawn at random, against independent arithmetic; the faults found. */
export function checkCases(cases: number, seed: number): string[] {
  const blocks = Array.from({ length: Math.ceil(cases / BLOCK) }, (_, block) =>
    checkBlock(block, Math.min(BLOCK, cases - block * BLOCK), seed),
  );
  return blocks.flat();
}

export function checkBlock(block: number, cases: number, seed: number): string[] {
  const chance = chanceOf(seed + Math.imul(block, 0x9e3779b1));
  const faults: string[] = [];
  for (let index = 0; index < cases; index += 1) {
    const problem = randomProblem(chance);
    const fault = faultIn(problem);
    const { stage, multiplicand, multiplier } = problem;
    if (fault !== null) faults.push(`${stage} ${multiplicand.text} × ${multiplier.text}: ${fault}`);
  }
  return faults;
}
