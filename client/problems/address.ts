import { type Problem, parseProblem } from '../../engine/child.ts';

/** The problems of an activity as they travel in an address: no child and no session is in them. */
export interface Given {
  readonly title: string;
  readonly problems: readonly Problem[];
}

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
  return { title: fields.get('title') ?? '', problems: fields.getAll('problem').flatMap(read) };
};
