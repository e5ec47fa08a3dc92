/** The one wire schema: what comes from outside becomes a problem or an action here, or a fault that names its argument. */
export { parseAction } from './wire/actions.ts';
export { parseProblem, writeProblem } from './wire/problems.ts';
