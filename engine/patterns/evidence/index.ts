import type { Stage } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';
import { barsEvidence } from './bars.ts';
import { cellsEvidence } from './cells.ts';
import type { EvidencePart } from './evidence.ts';
import { paperEvidence } from './paper.ts';

type Reader = (work: DoneWork) => readonly EvidencePart[];

const READERS: Readonly<Partial<Record<Stage, Reader>>> = {
  bars: barsEvidence,
  record: barsEvidence,
  cells: cellsEvidence,
  paper: paperEvidence,
};

/** What one work shows: for any beliefs, each decision beside what they would have had it be. */
export function evidenceOf(work: DoneWork): readonly EvidencePart[] {
  return READERS[work.problem.stage]?.(work) ?? [];
}
