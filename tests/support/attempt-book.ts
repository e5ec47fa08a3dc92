import {
  type Action,
  fractionText,
  parseAction,
  parseProblem,
  refusalOf,
  replay,
  score,
  type Work,
  type WrittenProblem,
} from '../../engine/index.ts';

interface Kept {
  client: string;
  n: number;
  at: number;
  problem: number;
  action: Action;
  aside?: string;
}

type Written = Omit<Kept, 'aside'>;

/** The attempt of one person as a server keeps it, in memory: append-only, each action once, judged by the engine. */
export class AttemptBook {
  readonly entries: Kept[] = [];
  readonly person: string;
  problems: readonly WrittenProblem[];
  /** Of which one is still to be picked. */
  choices: readonly WrittenProblem[] = [];
  beads = 'blueFive';
  readonly release: 'onFinish' | 'byTeacher';

  constructor(
    person: string,
    problems: readonly WrittenProblem[],
    release: 'onFinish' | 'byTeacher' = 'onFinish',
  ) {
    this.person = person;
    this.problems = problems;
    this.release = release;
  }

  works(): Work[] {
    return this.problems.map((written, index) => {
      const problem = parseProblem(written);
      if (!problem.ok) throw new Error(problem.fault.code);
      const judged = this.entries.filter((entry) => entry.problem === index && !entry.aside);
      return replay(
        problem.value,
        judged.map(({ action }) => action),
      );
    });
  }

  /** Picks one of the choices, once. */
  choose(index: number): void {
    const chosen = this.choices[index];
    if (chosen === undefined) return;
    this.problems = [chosen];
    this.choices = [];
  }

  shown() {
    const { entries, person, problems, choices, beads, release } = this;
    return {
      attempt: {
        id: `attempt-of-${person}`,
        title: 'Two numbers on the mat',
        person,
        problems,
        choices,
        beads,
        length: entries.length,
        actions: entries,
        trial: false,
        graded: true,
        release,
      },
    };
  }

  /** A batch, as the server takes it: what was seen before is acknowledged again; an outdated base gets the tail. */
  add(base: number, batch: readonly Written[]): { status: number; body: unknown } {
    const fresh = batch.filter(({ client, n }) => n > this.last(client));
    if (fresh.length > 0 && base !== this.entries.length) {
      const actions = this.entries.slice(base);
      return {
        status: 409,
        body: { error: { code: 'moved' }, length: this.entries.length, actions },
      };
    }
    for (const entry of fresh) {
      const read = parseAction(entry.action);
      if (!read.ok) return { status: 400, body: { error: { code: read.fault.code } } };
      this.keep({ ...entry, action: read.value });
    }
    return { status: 200, body: this.receipt(batch) };
  }

  result() {
    const works = this.works();
    const released = works.every((work) => work.finished.problem) && this.release === 'onFinish';
    const { awarded, available, fraction } = score(works);
    return {
      released,
      score: released
        ? {
            awarded: fractionText(awarded),
            available: fractionText(available),
            fraction: fractionText(fraction),
          }
        : null,
      problems: [],
      delivery: { state: released ? 'sent' : 'none', lastTriedAt: null },
    };
  }

  private last(client: string): number {
    return Math.max(-1, ...this.entries.filter((e) => e.client === client).map(({ n }) => n));
  }

  private keep(entry: Written): void {
    const work = this.works()[entry.problem];
    const aside = work === undefined ? 'finished' : refusalOf(work, entry.action);
    this.entries.push(aside === null ? entry : { ...entry, aside });
  }

  private receipt(batch: readonly Written[]) {
    const clients = [...new Set(batch.map(({ client }) => client))];
    return {
      length: this.entries.length,
      acknowledged: Object.fromEntries(clients.map((client) => [client, this.last(client)])),
      aside: this.entries
        .filter((e) => e.aside && batch.some(({ client, n }) => client === e.client && n === e.n))
        .map(({ client, n }) => ({ client, n })),
      finished: this.works().every((work) => work.finished.problem),
    };
  }
}

/** A book of one problem with all of this done in it, by a page that is gone. */
export const bookWith = (
  person: string,
  problem: WrittenProblem,
  actions: readonly Action[],
): AttemptBook => {
  const book = new AttemptBook(person, [problem]);
  book.add(
    0,
    actions.map((action, n) => ({ client: 'before', n, at: n, problem: 0, action })),
  );
  return book;
};
