import { type Problem, parseProblem } from '../../engine/child.ts';
import { BEADS, type Beads, beadsNamed } from '../ui/beads.ts';

/** The problems of an activity and its bead colours as they travel in an address: no child and no session is in them. */
export interface Given {
  readonly title: string;
  readonly problems: readonly Problem[];
  readonly beads: Beads;
}

export const NOTHING_GIVEN: Given = { title: '', problems: [], beads: BEADS[0] };

const read = (text: string): Problem[] => {
  try {
    const parsed = parseProblem(JSON.parse(text));
    return parsed.ok ? [parsed.value] : [];
  } catch {
    return [];
  }
};

/** What `fragmentOf` wrote; what cannot be played is left out. */
export const readFragment = (hash: string): Given => {
  const fields = new URLSearchParams(hash.replace(/^#/, ''));
  return {
    title: fields.get('title') ?? '',
    problems: fields.getAll('problem').flatMap(read),
    beads: beadsNamed(fields.get('beads')),
  };
};
