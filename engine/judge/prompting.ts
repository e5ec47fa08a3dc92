import type { ActionOf } from '../mat/action.ts';
import { onMat, placeOf, type Square } from '../mat/geometry.ts';
import { amountText, parseNumeral } from '../numerals/numeral.ts';
import type { Prompt } from '../problem.ts';
import type { Skill } from '../vocabulary.ts';
import { noted, withReadings } from './changes.ts';
import { finding, isOver, NOW, placed, sceneWith, stepOf } from './ledger.ts';
import type { Aspect, Finding, Ledger, Moment, Note, Scene } from './scene.ts';

type Answer = string | Square;
type NumberPrompt = Extract<Prompt, { ask: 'number' }>;

const SKILL_OF: Readonly<Record<Prompt['ask'], Skill>> = {
  worth: 'worth',
  square: 'finding',
  category: 'finding',
  number: 'building',
};

/** What a bead on a square of this place is worth: "100", "0.01". */
export function worthOf(place: number): string {
  return amountText(10n ** BigInt(Math.max(0, place)), Math.min(0, place));
}

/** The number as the child's own tiles show it; null while a tile of it is missing. */
function ownNumber({ plan, position }: Scene, { of }: NumberPrompt): string | null {
  const { digits, lowest } = plan.problem[of];
  const tiles = position.tiles[of === 'multiplicand' ? 'bottom' : 'right'];
  let highest = tiles.length - 1;
  while (highest >= digits.length && tiles[highest] === null) highest -= 1;
  const shown = tiles.slice(0, Math.max(highest + 1, digits.length));
  if (shown.some((tile) => tile === null)) return null;
  return amountText(BigInt([...shown].reverse().join('')), lowest);
}

/** The place that a prompt asks for; null where it asks for a number. */
function placeAsked({ plan }: Scene, prompt: Prompt): number | null {
  if (prompt.ask === 'worth') return placeOf(plan.problem.mat, prompt.square);
  if (prompt.ask === 'square') return prompt.place;
  return prompt.ask === 'category' ? prompt.places[0] + prompt.places[1] : null;
}

/** What is due, as text; null where it cannot be said yet. */
function dueOf(scene: Scene, prompt: Prompt, moment: Moment): string | null {
  if (prompt.ask === 'number') {
    // A number with a tile forgotten is read as it was given: the tile pays.
    return ownNumber(scene, prompt) ?? (isOver(moment) ? trueNumber(scene, prompt) : null);
  }
  return worthOf(placeAsked(scene, prompt)!);
}

function trueNumber({ plan }: Scene, { of }: NumberPrompt): string {
  const { digits, lowest } = plan.problem[of];
  return amountText(BigInt([...digits].reverse().join('')), lowest);
}

/** Any square of the place is right; a number may be written with zeros at its ends. */
function isRight(scene: Scene, prompt: Prompt, answer: Answer, due: string): boolean {
  if (prompt.ask === 'square' || prompt.ask === 'category') {
    if (typeof answer === 'string') return false;
    const { mat } = scene.plan.problem;
    return onMat(mat, answer) && placeOf(mat, answer) === placeAsked(scene, prompt);
  }
  if (typeof answer !== 'string') return false;
  return plain(answer) === due;
}

/** Without zeros that change nothing; null for what is no number. */
function plain(answer: string): string | null {
  const parsed = parseNumeral(answer, 'answer');
  if (!parsed.ok) return null;
  const { digits, lowest } = parsed.value;
  return amountText(BigInt([...digits].reverse().join('')), lowest);
}

function shown(answer: Answer): string {
  return typeof answer === 'string' ? answer : answer.join(':');
}

const note: Note<ActionOf<'say'>> = (before, after, action) => {
  const { plan, ledger } = before;
  if (!('prompt' in action)) return { ledger };
  const scene = sceneWith(before, after);
  const prompt = plan.problem.prompts[action.prompt]!;
  const due = dueOf(scene, prompt, NOW);
  const step = stepOf(plan, `prompt:${action.prompt}`);
  const given = shown(action.answer);
  if (due === null) return noted(ledger, step, 'neutral', given, due);
  if (!isRight(scene, prompt, action.answer, due)) return noted(ledger, step, 'wrong', given, due);
  const latched = keep(scene, action.prompt, action.answer, due);
  const verdict = latched.readings.answered[action.prompt]!.follows ? 'follows' : 'right';
  return noted(latched, step, verdict, given, due);
};

function keep(scene: Scene, index: number, answer: Answer, due: string): Ledger {
  const prompt = scene.plan.problem.prompts[index]!;
  const follows = prompt.ask === 'number' && due !== trueNumber(scene, prompt);
  const entry = { given: shown(answer), follows };
  return withReadings(scene.ledger, {
    answered: placed(scene.ledger.readings.answered, index, entry),
  });
}

function findingOf(scene: Scene, moment: Moment, index: number): Finding {
  const prompt = scene.plan.problem.prompts[index]!;
  const answer = scene.position.said.prompts[index];
  const due = dueOf(scene, prompt, moment);
  if (answer === undefined) return finding('none', false, null, due);
  const given = shown(answer);
  const before = scene.ledger.readings.answered[index];
  if (before?.given === given) return finding('right', before.follows, given, due);
  if (due === null) return finding('none', false, given, null);
  if (!isRight(scene, prompt, answer, due)) return finding('wrong', false, given, due);
  return finding('right', prompt.ask === 'number' && due !== trueNumber(scene, prompt), given, due);
}

/** The questions of `walk` and `build`, a step each. */
export const prompting: Aspect = {
  steps: (plan) =>
    plan.problem.prompts.map(({ ask }, index) => ({ id: `prompt:${index}`, skill: SKILL_OF[ask] })),
  notes: { say: note },
  assess: (scene, moment, findings) => {
    for (const index of scene.plan.problem.prompts.keys()) {
      findings[stepOf(scene.plan, `prompt:${index}`)] = findingOf(scene, moment, index);
    }
  },
};
