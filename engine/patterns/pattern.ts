import type { Beliefs } from '../pupils/beliefs.ts';
import type { Skill, Stage } from '../vocabulary.ts';

/** What a guide may present again. Common practice, no source. */
export const PRESENTATIONS = [
  'numberBuilding',
  'layingARow',
  'exchange',
  'slide',
  'placesOfProducts',
  'recording',
  'writtenPartials',
  'writtenAlgorithm',
  'factsByHeart',
  'decimalMat',
] as const;
export type Presentation = (typeof PRESENTATIONS)[number];

/** Where a pattern is known from: printed text read, literature from memory, or derived from the mat here. */
export interface Source {
  readonly basis: 'read' | 'fromMemory' | 'derived';
  readonly text: string;
}

/** A problem played under the pattern. `gives`: the product that is read in the end, if it is known. */
export interface Example {
  readonly stage: Stage;
  readonly multiplicand: string;
  readonly multiplier: string;
  readonly gives?: string;
}

/** One faulty way of working. A family has a variant for each of its parameters. */
export interface ErrorPattern {
  /** Plain words. */
  readonly id: string;
  readonly skill: Skill;
  readonly stages: readonly Stage[];
  /** Key of the words that say what a guide would see. */
  readonly sign: string;
  /** The procedure: the beliefs that a worker with this pattern holds, by parameter ('' if there is none). */
  readonly beliefs: Readonly<Record<string, Beliefs>>;
  readonly repeat: Presentation;
  readonly source: Source;
  readonly fires: Example;
  readonly silent: Example;
}

export const DERIVED: Source = { basis: 'derived', text: 'derived from the mat; no source' };

export function fromMemory(text: string): Source {
  return { basis: 'fromMemory', text };
}

export function readIn(text: string): Source {
  return { basis: 'read', text };
}
