import { svg } from 'lit';
import { printWords } from '../words/class-print-words.ts';
import type { Choice } from './choice.ts';
import { FAINT } from './inks.ts';
import { areaOf } from './paper.ts';
import type { Sheet } from './sheet.ts';

const linesOf = ({ paper, ruling }: Choice): string => {
  const area = areaOf(paper);
  const [columns, rows] = [Math.floor(area.width / ruling), Math.floor(area.height / ruling)];
  const [width, height] = [columns * ruling, rows * ruling];
  const left = area.x + (area.width - width) / 2;
  const upright = Array.from(
    { length: columns + 1 },
    (_, i) => `M${left + i * ruling} ${area.y}v${height}`,
  );
  const level = Array.from(
    { length: rows + 1 },
    (_, i) => `M${left} ${area.y + i * ruling}h${width}`,
  );
  return [...upright, ...level].join('');
};

export const squaredSheets = (choice: Choice): Sheet[] => [
  {
    title: printWords('squaredTitle', { ruling: choice.ruling }),
    part: printWords('squaredPart'),
    landscape: false,
    text: false,
    content: svg`<path class="ruling" d=${linesOf(choice)} fill="none" stroke=${FAINT} stroke-width=${choice.inks === 'colour' ? 0.25 : 0.12} />`,
  },
];
