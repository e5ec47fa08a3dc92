import type { WrittenProblem } from '../../engine/child.ts';

/** How a problem is answered and marked is no matter of a sheet or a presentation. */
const bare = ({ policy: _policy, ...written }: WrittenProblem): WrittenProblem => written;

/** What follows the `#` of `/print` and `/present`: a browser keeps it to itself and sends it nowhere. */
export const fragmentOf = (title: string, problems: readonly WrittenProblem[]): string => {
  const fields = new URLSearchParams({ title });
  for (const problem of problems) fields.append('problem', JSON.stringify(bare(problem)));
  return fields.toString();
};
