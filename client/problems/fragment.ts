import type { WrittenProblem } from '../../engine/child.ts';
import type { Beads } from '../ui/beads.ts';

/** How a problem is answered and marked is no matter of a sheet or a presentation. */
const bare = ({ policy: _policy, ...written }: WrittenProblem): WrittenProblem => written;

/** What of an activity those pages need. */
interface Shared {
  readonly title: string;
  readonly problems: readonly WrittenProblem[];
  readonly beads: Beads;
}

/** What follows the `#` of `/print` and `/present`: a browser keeps it to itself and sends it nowhere. */
export const fragmentOf = ({ title, problems, beads }: Shared): string => {
  const fields = new URLSearchParams({ title, beads });
  for (const problem of problems) fields.append('problem', JSON.stringify(bare(problem)));
  return fields.toString();
};
