import { html, svg } from 'lit';
import { HELP_PARTS, printWords } from '../words/class-print-words.ts';
import type { Choice } from './choice.ts';
import { areaOf } from './paper.ts';
import { type Sheet, textBox } from './sheet.ts';

/** How an adult helps without telling the answer. */
export const helpSheets = (choice: Choice): Sheet[] => [
  {
    title: printWords('helpTitle'),
    part: printWords('helpPart'),
    landscape: false,
    text: true,
    content: svg`${textBox(
      areaOf(choice.paper),
      4.2,
      HELP_PARTS.map(
        ({ heading, lines }) =>
          html`<h2>${printWords(heading)}</h2><ul>${lines.map((line) => html`<li>${printWords(line)}</li>`)}</ul>`,
      ),
    )}`,
  },
];
