/** Synthetic pupils, to measure what their work is explained by. */
export type { Figures, PatternFigures } from './figures.ts';
export { canPlay } from './play.ts';
export { type Simulated, type Simulation, simulate } from './simulate.ts';
