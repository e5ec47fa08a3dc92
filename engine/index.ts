/**
 * The full door, for the server and the command line. Functions named `parse…` take anything and name the argument that
 * is wrong; all others take only what those gave, and name the argument where a value of its type can still be wrong.
 */
import './stages/index.ts';

export * from './child.ts';
export * from './mastery/index.ts';
export * from './patterns/index.ts';
export * from './problems/index.ts';
export * from './pupils/index.ts';
export { actAll } from './replay.ts';
