import type { Stage } from '../../vocabulary.ts';
import type { DoneWork } from '../done.ts';
import { barsSeen } from './bars.ts';
import { cellsSeen } from './cells.ts';
import type { Strand } from './evidence.ts';
import { paperSightings } from './paper.ts';

type Reader = (work: DoneWork) => readonly Strand[];

const READERS: Readonly<Partial<Record<Stage, Reader>>> = {
  bars: barsSeen,
  record: barsSeen,
  cells: cellsSeen,
  paper: paperSightings,
};

/** What one work shows, strand by strand, to be held against any beliefs. */
export function evidenceOf(work: DoneWork): readonly Strand[] {
  return READERS[work.problem.stage]?.(work) ?? [];
}
