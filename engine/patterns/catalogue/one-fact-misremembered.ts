import type { Beliefs } from '../../pupils/beliefs.ts';
import { type ErrorPattern, fromMemory } from '../pattern.ts';

const LARGEST = 9;

/** Wrong products that children give: a neighbouring group, or just beside the right one. */
function wrongProducts(a: number, b: number): number[] {
  const right = a * b;
  const near = [right - a, right + a, right - b, right + b, right - 1, right + 1, right - 2];
  return [...new Set([...near, right + 2, right - 10, right + 10])].filter((value) => value > 0);
}

/** The parameter: two digits from three on, and the product that is remembered for them. */
function oneFact(): Record<string, Beliefs> {
  const family: Record<string, Beliefs> = {};
  for (let small = 3; small <= LARGEST; small += 1)
    for (let large = small; large <= LARGEST; large += 1)
      for (const wrong of wrongProducts(small, large)) {
        family[`${small} × ${large} = ${wrong}`] = {
          fact: ({ a, b }, right) =>
            Math.min(a, b) === small && Math.max(a, b) === large ? wrong : right,
        };
      }
  return family;
}

const ONE_FACT = oneFact();

/** The same two digits always make the same wrong product. */
export const oneFactMisremembered: ErrorPattern = {
  id: 'one fact misremembered',
  skill: 'fact',
  stages: ['cells', 'paper'],
  sign: 'oneFactMisremembered',
  beliefs: ONE_FACT,
  repeat: 'factsByHeart',
  source: fromMemory(
    'Campbell and Graham (1985), Can. J. Psych. 39: answers of a neighbouring operand',
  ),
  fires: { stage: 'paper', multiplicand: '867', multiplier: '78' },
  silent: { stage: 'paper', multiplicand: '212', multiplier: '12' },
};
