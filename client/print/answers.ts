import { type Problem, type Prompt, parseProblem, replay, worked } from '../../engine/child.ts';

/** What the worked presentation comes to; numbers exact, with "." for the point. */
export interface Answer {
  readonly product: string;
  /** Units row first: the digit of the multiplier and what its row makes. */
  readonly partials: readonly { readonly digit: number; readonly value: string }[];
  readonly exchanges: number;
}

/** Digits by place as a number is written; a place without a digit holds none. */
const textOf = (line: Readonly<Record<string, number>>): string => {
  const places = Object.keys(line).map(Number);
  const [high, low] = [Math.max(0, ...places), Math.min(0, ...places)];
  let text = '';
  for (let place = high; place >= low; place -= 1)
    text += `${line[place] ?? 0}${place === 0 && low < 0 ? '.' : ''}`;
  return text;
};

/** The numbers worked in bars to the end, whatever stage they were set for; null where no mat holds them. */
export const answerOf = ({ multiplicand, multiplier }: Problem): Answer | null => {
  const parsed = parseProblem({
    stage: multiplier.digits.length === 1 ? 'bars1' : 'bars',
    multiplicand: multiplicand.text,
    multiplier: multiplier.text,
  });
  if (!parsed.ok) return null;
  const actions = worked(parsed.value).map(({ action }) => action);
  const { position } = replay(parsed.value, actions);
  return {
    product: textOf(position.paper.lines.product ?? {}),
    partials: multiplier.digits.map((digit, row) => ({
      digit,
      value: position.said.rows[row] ?? '0',
    })),
    exchanges: actions.filter((action) => action.do === 'exchange').length,
  };
};

/** A question with its answer: a number, or the square that was asked for. */
export interface Asked {
  readonly prompt: Prompt;
  readonly answer: string | readonly [row: number, column: number];
}

/** The questions of a problem that has any, as the worked presentation answers them. */
export const askedOf = (problem: Problem): Asked[] =>
  worked(problem).flatMap(({ action }) => {
    if (action.do !== 'say' || !('prompt' in action)) return [];
    const prompt = problem.prompts[action.prompt];
    return prompt === undefined ? [] : [{ prompt, answer: action.answer }];
  });
