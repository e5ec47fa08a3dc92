/** Error patterns: the catalogue, and which of them a child's works show. */
export { CATALOGUE } from './catalogue/index.ts';
export { designSet, type SetDesign } from './design/designed.ts';
export { type Explanation, explain, type Reported } from './explain.ts';
export { type ErrorPattern, type Example, PRESENTATIONS, type Source } from './pattern.ts';
