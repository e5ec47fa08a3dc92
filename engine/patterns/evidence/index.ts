import type { Beliefs } from '../../pupils/beliefs.ts';
import type { Stage } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';
import { barsEvidence } from './bars.ts';
import { cellsEvidence } from './cells.ts';
import type { Expectation } from './evidence.ts';
import { paperEvidence } from './paper.ts';

/** What one work shows: for any beliefs, each decision beside what they would have had it be. */
export type Evidence = (beliefs: Beliefs) => readonly Expectation[];

const READERS: Readonly<Partial<Record<Stage, (work: DoneWork) => Evidence>>> = {
  bars: barsEvidence,
  record: barsEvidence,
  cells: cellsEvidence,
  paper: paperEvidence,
};

export function evidenceOf(work: DoneWork): Evidence {
  return READERS[work.problem.stage]?.(work) ?? (() => []);
}
