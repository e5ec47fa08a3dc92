import { type Problem, parseProblem, type WrittenProblem } from '../../engine/child.ts';

/** The problems of an activity as they travel in an address: no child and no session is in them. */
export interface Given {
  readonly title: string;
  readonly problems: readonly Problem[];
}

/** How it is worked and answered is no matter of a sheet or a presentation. */
const bare = ({ policy: _policy, ...written }: WrittenProblem): WrittenProblem => written;

/** What follows the `#` of `/print` and `/present`: a browser keeps it to itself and sends it nowhere. */
export const fragmentOf = (title: string, problems: readonly WrittenProblem[]): string => {
  const fields = new URLSearchParams({ title });
  for (const problem of problems) fields.append('problem', JSON.stringify(bare(problem)));
  return fields.toString();
};

const read = (text: string): Problem[] => {
  try {
    const parsed = parseProblem(JSON.parse(text));
    return parsed.ok ? [parsed.value] : [];
  } catch {
    return [];
  }
};

/** What cannot be played is left out. */
export const readFragment = (hash: string): Given => {
  const fields = new URLSearchParams(hash.replace(/^#/, ''));
  return { title: fields.get('title') ?? '', problems: fields.getAll('problem').flatMap(read) };
};
