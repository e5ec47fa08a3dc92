/** The full door, for the server and the command line. */
export * from './child.ts';
