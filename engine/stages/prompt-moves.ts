import { stepOf } from '../judge/ledger.ts';
import { worthOf } from '../judge/prompting.ts';
import type { Finding, Findings, Scene } from '../judge/scene.ts';
import type { Suggestion } from '../judge/work.ts';
import { placeOf, type Square } from '../mat/geometry.ts';
import type { Prompt } from '../problem.ts';
import { sayPrompt } from './captions.ts';

/** The first question that is not answered rightly yet. */
export function nextPrompt(scene: Scene, findings: Findings): Suggestion | null {
  const { plan, position } = scene;
  for (const [index, prompt] of plan.problem.prompts.entries()) {
    const found = findings.at(stepOf(plan, `prompt:${index}`))!;
    const answer = answerOf(scene, prompt, found);
    const given = position.said.prompts[index];
    if (found.grade === 'right' || JSON.stringify(given) === JSON.stringify(answer)) continue;
    return sayPrompt(index, prompt, answer);
  }
  return null;
}

function answerOf({ plan }: Scene, prompt: Prompt, found: Finding): string | Square {
  const { mat } = plan.problem;
  switch (prompt.ask) {
    case 'worth':
      return worthOf(placeOf(mat, prompt.square));
    case 'square':
      return lowestSquare(mat, prompt.place);
    case 'category':
      return lowestSquare(mat, prompt.places[0] + prompt.places[1]);
    case 'number':
      return found.due === null ? plan.problem[prompt.of].text : `${found.due}`;
  }
}

/** The square of a place that lies nearest to the bottom row. */
function lowestSquare(mat: { columns: number; origin: number }, place: number): Square {
  const index = place - mat.origin;
  const row = Math.max(0, index - (mat.columns - 1));
  return [row, index - row];
}
