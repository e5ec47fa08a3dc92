import {
  act,
  type Problem,
  parseProblem,
  refusalOf,
  replay,
  type Work,
  type WrittenProblem,
} from '../../engine/index.ts';
import type { Entry } from './schema.ts';

/** Where an attempt stands: the work on each problem, and how far each page's actions have come in. */
export interface Standing {
  readonly works: readonly Work[];
  readonly length: number;
  /** Per client the next `n` that has not been seen. */
  readonly marks: ReadonlyMap<string, number>;
  /** Keys of the actions that are kept but not judged. */
  readonly aside: ReadonlySet<string>;
}

export const keyOf = ({ client, n }: Pick<Entry, 'client' | 'n'>): string => `${client} ${n}`;

/** Replays what is kept. What was set aside once stays aside: it is not decided again. */
export function standingOf(
  problems: readonly WrittenProblem[],
  entries: readonly Entry[],
): Standing {
  const judged = problems.map((): Entry['action'][] => []);
  for (const entry of entries)
    if (entry.aside === undefined) judged[entry.problem]?.push(entry.action);
  const works = problems.map((written, index) => replay(playable(written), judged[index] ?? []));
  return follow({ works, length: 0, marks: new Map(), aside: new Set() }, works, entries);
}

/** Lays new actions on the work in order. What real material could not do, or what comes after the finish, is set aside. */
export function lay(
  standing: Standing,
  fresh: readonly Omit<Entry, 'aside'>[],
): { entries: Entry[]; standing: Standing } {
  const works = [...standing.works];
  const entries = fresh.map((entry): Entry => {
    const work = works[entry.problem] as Work;
    const aside = refusalOf(work, entry.action);
    if (aside !== null) return { ...entry, aside };
    works[entry.problem] = act(work, entry.action);
    return entry;
  });
  return { entries, standing: follow(standing, works, entries) };
}

function follow(before: Standing, works: readonly Work[], entries: readonly Entry[]): Standing {
  const marks = new Map(before.marks);
  const aside = new Set(before.aside);
  for (const entry of entries) {
    marks.set(entry.client, entry.n + 1);
    if (entry.aside !== undefined) aside.add(keyOf(entry));
  }
  return { works, length: before.length + entries.length, marks, aside };
}

/** Problems are checked when an activity is made; one that no longer reads is a fault of ours. */
function playable(written: WrittenProblem): Problem {
  const problem = parseProblem(written);
  if (!problem.ok) throw new Error(`a stored problem cannot be played: ${problem.fault.code}`);
  return problem.value;
}

export const problemsFinished = ({ works }: Standing): number =>
  works.filter((work) => work.finished.problem).length;

export const isFinished = (standing: Standing): boolean =>
  standing.works.length > 0 && problemsFinished(standing) === standing.works.length;
