import { svg } from 'lit';
import { line, picture, way } from '../pictures.ts';
import { sentence } from '../says.ts';
import type { Tool } from '../tool.ts';
import { read } from './product.ts';

const sumPicture = picture([
  ...line(55, 2, '.34'),
  ...line(55, 22, '12.'),
  svg`<path class="way" d="M50 45h68" />`,
  ...line(55, 50, '..4'),
  way('M136 6v50M131 50l5 6 5-6'),
]);

/** The product as a sum: of rows, or along the diagonals; what is carried may be noted. */
export const sum: Tool = {
  ...read,
  id: 'sum',
  word: 'moveAdd',
  ask: 'askAdd',
  picture: sumPicture,
  carries: true,
  press: () => {},
  says: ({ work }) => {
    const { stage, multiplier } = work.problem;
    if (stage === 'cells') return sentence('nextAddDiagonals');
    return sentence(multiplier.digits.length > 1 ? 'nextAddRows' : 'nextMultiply');
  },
};
