import {
  act,
  actAll,
  type Problem,
  parseProblem,
  refusalOf,
  startWork,
  type Work,
  type WrittenProblem,
} from '../../engine/index.ts';
import { createBreath } from '../breath.ts';
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

type Breath = () => Promise<void>;

/** Actions that are replayed without a pause: even on the largest mat they keep nobody waiting for long. */
const PART = 25;

/**
 * Replays what is kept. What was set aside once stays aside: it is not decided again. Judging takes time, and there
 * may be very many actions: it pauses for everybody else, as does `lay`.
 */
export async function standingOf(
  problems: readonly WrittenProblem[],
  entries: readonly Entry[],
): Promise<Standing> {
  const judged = problems.map((): Entry['action'][] => []);
  for (const entry of entries)
    if (entry.aside === undefined) judged[entry.problem]?.push(entry.action);
  const breathe = createBreath();
  const works: Work[] = [];
  for (const [index, written] of problems.entries())
    works.push(await replayed(playable(written), judged[index] ?? [], breathe));
  return follow({ works, length: 0, marks: new Map(), aside: new Set() }, works, entries);
}

async function replayed(problem: Problem, actions: readonly Entry['action'][], breathe: Breath) {
  let work = startWork(problem);
  for (let from = 0; from < actions.length; from += PART) {
    work = actAll(work, actions.slice(from, from + PART));
    await breathe();
  }
  return work;
}

/** Lays new actions on the work in order. What real material could not do, or what comes after the finish, is set aside. */
export async function lay(
  standing: Standing,
  fresh: readonly Omit<Entry, 'aside'>[],
): Promise<{ entries: Entry[]; standing: Standing }> {
  const breathe = createBreath();
  const works = [...standing.works];
  const entries: Entry[] = [];
  for (const entry of fresh) {
    entries.push(layOne(works, entry));
    await breathe();
  }
  return { entries, standing: follow(standing, works, entries) };
}

/** Brings the work on the entry's problem up to date, unless the entry is set aside. */
function layOne(works: Work[], entry: Omit<Entry, 'aside'>): Entry {
  const work = works[entry.problem] as Work;
  const aside = refusalOf(work, entry.action);
  if (aside !== null) return { ...entry, aside };
  works[entry.problem] = act(work, entry.action);
  return entry;
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
