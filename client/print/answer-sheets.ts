import { svg } from 'lit';
import type { Problem } from '../../engine/child.ts';
import { printWords } from '../words/class-print-words.ts';
import { numbersText, numeral } from '../words/words.ts';
import { answerOf, askedOf } from './answers.ts';
import type { Choice } from './choice.ts';
import { flow, type Placed } from './flow.ts';
import { FAINT } from './inks.ts';
import { areaOf } from './paper.ts';
import { replyOf } from './question-words.ts';
import type { Sheet } from './sheet.ts';

const LINE = 5.4;
const COLUMN = 95;

interface Block {
  readonly width: number;
  readonly height: number;
  readonly heading: string;
  readonly lines: readonly string[];
}

const calculated = (problem: Problem): string[] => {
  const answer = answerOf(problem);
  if (answer === null) return [printWords('noMatHolds')];
  const rows = answer.partials.map(({ digit, value }) =>
    printWords('partial', { digit, value: numeral(value) }),
  );
  return [
    ...(rows.length > 1 ? rows : []),
    printWords('product', { product: numeral(answer.product) }),
    printWords('exchanges', { count: answer.exchanges }),
  ];
};

const asked = (problem: Problem): string[] =>
  askedOf(problem).map((each, i) => `${i + 1}. ${replyOf(each)}`);

const blockOf = (problem: Problem, index: number): Block => {
  const hasNumbers = problem.multiplicand.digits.length > 0;
  const lines = hasNumbers ? calculated(problem) : asked(problem);
  const heading = `${index + 1}.  ${hasNumbers ? numbersText(problem) : printWords('questions')}`;
  return { width: COLUMN, height: (lines.length + 2) * LINE, heading, lines };
};

const sizeFor = (text: string, most: number): number =>
  Math.min(most, (COLUMN - 8) / (text.length * 0.56));

const draw = ({
  x,
  y,
  height,
  heading,
  lines,
}: Placed<Block>) => svg`<g class="answer" transform=${`translate(${x} ${y})`}>
  <text x="2" y=${LINE} font-size=${sizeFor(heading, 4)} font-weight="700">${heading}</text>
  ${lines.map((line, i) => svg`<text x="6" y=${(i + 2) * LINE} font-size=${sizeFor(line, 3.6)}>${line}</text>`)}
  <path d=${`M2 ${height - 2.6}h${COLUMN - 8}`} stroke=${FAINT} stroke-width="0.15" />
</g>`;

/** Every product with its partial products and how many exchanges there are on the way. */
export const answerSheets = (choice: Choice): Sheet[] =>
  flow(choice.problems.map(blockOf), areaOf(choice.paper)).map((page) => ({
    title: printWords('answersTitle'),
    part: printWords('answersPart'),
    landscape: false,
    text: true,
    content: svg`${page.map(draw)}`,
  }));
