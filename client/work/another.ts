import { type Problem, parseProblem, writeProblem } from '../../engine/child.ts';

const KINDS = 8;
/** How far a digit moves on among 2 … 9; not the same below and beside, so that no fact of the problem comes back square for square. */
const SHIFTS = { multiplicand: 3, multiplier: 5 } as const;

/** Another number that looks alike: as many digits, its zeros and its point where they were, every other digit changed. */
const alike = (text: string, shift: number): string =>
  text.replace(/[1-9]/g, (digit) => String(((Number(digit) - 2 + shift + KINDS) % KINDS) + 2));

/**
 * Another problem of the same shape, always the same one for the same problem: what is watched teaches how it is done
 * and gives no step of the child's own work away.
 */
export const anotherLike = (problem: Problem): Problem => {
  const written = writeProblem(problem);
  const seed = problem.walk === null ? {} : { seed: (problem.walk.seed + 1) % 2 ** 32 };
  const numbers =
    written.multiplicand === undefined || written.multiplier === undefined
      ? {}
      : {
          multiplicand: alike(written.multiplicand, SHIFTS.multiplicand),
          multiplier: alike(written.multiplier, SHIFTS.multiplier),
        };
  const parsed = parseProblem({ ...written, ...seed, ...numbers });
  // It is as long as the problem, so that the same mat holds it.
  if (!parsed.ok) throw new Error(`no problem like this one: ${parsed.fault.code}`);
  return parsed.value;
};
