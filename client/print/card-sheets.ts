import { svg } from 'lit';
import type { Problem } from '../../engine/child.ts';
import { printWords } from '../words/class-print-words.ts';
import { numbersText } from '../words/words.ts';
import type { Choice } from './choice.ts';
import { flow, type Placed } from './flow.ts';
import { FAINT } from './inks.ts';
import { areaOf } from './paper.ts';
import { cardQuestion } from './question-words.ts';
import { type Sheet, textBox } from './sheet.ts';

interface Card {
  readonly width: number;
  readonly height: number;
  readonly number: number;
  readonly problem: Problem;
}

const CARD = { width: 95, height: 54 };

/** Large letters as long as the line has room: a digit is about 0.58 of its height wide. */
const sizeFor = (text: string): number => Math.min(13, (CARD.width - 12) / (text.length * 0.58));

const content = ({ problem, width, height }: Card) => {
  if (problem.multiplicand.digits.length === 0) {
    const box = { x: 6, y: 10, width: width - 12, height: height - 12 };
    return problem.prompts.map((prompt, i) =>
      textBox({ ...box, y: box.y + i * 6, height: 6 }, 3.6, `${i + 1}. ${cardQuestion(prompt)}`),
    );
  }
  const text = numbersText(problem);
  return svg`<text x=${width / 2} y=${height * 0.6} font-size=${sizeFor(text)} text-anchor="middle">${text}</text>`;
};

const draw = (
  card: Placed<Card>,
) => svg`<g class="card" transform=${`translate(${card.x} ${card.y})`}>
  <rect class="cut" width=${card.width} height=${card.height} fill="none" stroke=${FAINT} stroke-width="0.2" />
  <text x="5" y="7.5" font-size="4">${card.number}</text>
  ${content(card)}
</g>`;

/** Two cards a line; a card of questions has the line to itself, and is as high as its questions need. */
const sizeOf = ({ prompts, multiplicand }: Problem) =>
  multiplicand.digits.length > 0
    ? CARD
    : { width: 2 * CARD.width, height: 14 + prompts.length * 6 };

/** A card a problem, numbered as in the answer key. */
export const cardSheets = (choice: Choice): Sheet[] => {
  const cards = choice.problems.map((problem, i) => ({
    ...sizeOf(problem),
    number: i + 1,
    problem,
  }));
  return flow(cards, areaOf(choice.paper)).map((page) => ({
    title: printWords('cardsTitle'),
    part: printWords('cardsPart'),
    landscape: false,
    text: true,
    content: svg`${page.map(draw)}`,
  }));
};
