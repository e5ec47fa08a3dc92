import type { Problem, Prompt } from '../problem.ts';

/** The questions of `walk` (drawn from its seed) and `build` (the two numbers read back). */
export function promptsOf(problem: Omit<Problem, 'prompts'>): readonly Prompt[] {
  if (problem.stage === 'build') {
    return [
      { ask: 'number', of: 'multiplicand' },
      { ask: 'number', of: 'multiplier' },
    ];
  }
  return problem.walk === null ? [] : walkPrompts(problem, problem.walk);
}

function walkPrompts(
  { mat }: Omit<Problem, 'prompts'>,
  walk: NonNullable<Problem['walk']>,
): readonly Prompt[] {
  const draw = drawer(walk.seed);
  const kinds = walk.categories ? 3 : 2;
  return Array.from({ length: walk.prompts }, (_, index): Prompt => {
    const row = draw(mat.rows);
    const column = draw(mat.columns);
    if (index % kinds === 0) return { ask: 'worth', square: [row, column] };
    if (index % kinds === 1) return { ask: 'square', place: mat.origin + row + column };
    return { ask: 'category', places: [column, row] };
  });
}

/** Numbers from a seed by a 32-bit mix of a counter (splitmix, public domain): the same seed, the same walk, everywhere. */
function drawer(seed: number): (below: number) => number {
  let state = seed >>> 0;
  return (below) => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) % below;
  };
}
