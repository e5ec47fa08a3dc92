import type { Work } from '../../engine/index.ts';

/** The one line that goes to the gradebook beside the score; everything the server writes there is worded here. */
export function gradebookComment(works: readonly Work[]): string {
  const finished = works.filter((work) => work.finished.problem).length;
  const problems = `${finished} of ${works.length} ${plural(works.length, 'problem')} finished`;
  const mended = stepsWith(works, 'corrected');
  const open = stepsWith(works, 'notRight') + stepsWith(works, 'open');
  const parts = [
    problems,
    ...(mended > 0 ? [`${mended} ${plural(mended, 'step')} put right`] : []),
    ...(open > 0 ? [`${open} ${plural(open, 'step')} not right`] : []),
  ];
  return `${parts.join('; ')}.`;
}

function stepsWith(works: readonly Work[], status: 'corrected' | 'notRight' | 'open'): number {
  return works.flatMap((work) => work.steps).filter((step) => step.status === status).length;
}

const plural = (count: number, word: string): string => (count === 1 ? word : `${word}s`);
