/** The full door, for the server and the command line. */
import './stages/index.ts';

export * from './child.ts';
export * from './mastery/index.ts';
export * from './patterns/index.ts';
export * from './problems/index.ts';
export * from './pupils/index.ts';
export { actAll } from './replay.ts';
