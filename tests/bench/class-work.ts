import { type Action, type Problem, parseAction, parseProblem } from '../../engine/index.ts';
import type { Told } from '../oracle/beads.ts';
import { CellsPupil, randomCellsHabits } from '../oracle/cells-pupil.ts';
import { CELLS_SLIPS } from '../oracle/cells-slips.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import { randomHabits } from '../oracle/habits.ts';
import { PaperPupil, randomPaperHabits } from '../oracle/paper-pupil.ts';
import { PAPER_SLIPS } from '../oracle/paper-slips.ts';
import { SLIPS, slipOnce } from '../oracle/slips.ts';
import { Worker } from '../oracle/worker.ts';

/** What one pupil did on one problem, as it is kept. */
export interface PupilWork {
  readonly problem: Problem;
  readonly actions: readonly Action[];
}

type Mixed = 'bars1' | 'bars' | 'record' | 'cells' | 'paper';

/**
 * Digits of the two numbers: as many as make the problems some 120 actions long in the mean. One row of bars, cells and
 * paper are the largest that a mat holds, and still a little shorter.
 */
const SIZES: Readonly<Record<Mixed, readonly [multiplicand: number, multiplier: number]>> = {
  bars1: [12, 1],
  bars: [5, 3],
  record: [6, 3],
  cells: [7, 6],
  paper: [7, 6],
};
const STAGES = Object.keys(SIZES) as readonly Mixed[];
/** One problem in so many has a slip. */
const SLIPS_ONE_IN = 4;

/** The same problems for the whole class, at mixed stages; each pupil in an order of its own, some with a slip. */
export function classWork(pupils: number, problems: number, seed: number): PupilWork[] {
  const chance = chanceOf(seed);
  const given = Array.from({ length: problems }, (_, index) =>
    problemAt(STAGES[index % STAGES.length]!, chance),
  );
  return Array.from({ length: pupils }, () =>
    given.map((problem) => ({ problem, actions: actionsOf(play(problem, chance)) })),
  ).flat();
}

function problemAt(stage: Mixed, chance: Chance): Problem {
  const [across, up] = SIZES[stage];
  // A slip may put bars on another row than the only one.
  const mat = up === 1 ? { rows: 2, columns: across + 1 } : undefined;
  const parsed = parseProblem({
    stage,
    multiplicand: numberOf(across, chance),
    multiplier: numberOf(up, chance),
    ...(mat === undefined ? {} : { mat }),
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

function numberOf(digits: number, chance: Chance): string {
  return Array.from({ length: digits }, (_, index) =>
    String(index === 0 || !chance.maybe(0.1) ? 1 + chance.below(9) : 0),
  ).join('');
}

function play(problem: Problem, chance: Chance): readonly Told[] {
  const { multiplicand, multiplier, mat, stage } = problem;
  const given = { across: multiplicand.digits, up: multiplier.digits, ...mat };
  const slips = chance.below(SLIPS_ONE_IN) === 0;
  const anyOf = <T>(all: Readonly<Record<string, T>>): T => chance.pick(Object.values(all));
  if (stage === 'paper') {
    const slip = slips ? anyOf(PAPER_SLIPS)(chance).slip : {};
    return new PaperPupil(given, randomPaperHabits(chance), chance, slip).work();
  }
  if (stage === 'cells') {
    const slip = slips ? anyOf(CELLS_SLIPS)(chance).slip : {};
    const [habits, ways] = [randomPaperHabits(chance), randomCellsHabits(chance)];
    return new CellsPupil(given, habits, ways, chance, slip).work();
  }
  const habits = { ...randomHabits(chance), records: stage === 'record' };
  const { slip } = slipOnce(chance.pick(Object.keys(SLIPS)), chance);
  return new Worker(given, habits, chance, slips ? slip : null).work();
}

function actionsOf(told: readonly Told[]): Action[] {
  return told.flatMap((each) => {
    const parsed = parseAction(each);
    return parsed.ok ? [parsed.value] : [];
  });
}
