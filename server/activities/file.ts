import * as v from 'valibot';
import { parseProblem, type WrittenProblem, writeProblem } from '../../engine/index.ts';
import { BEADS, type Beads, RELEASES, type Release } from './schema.ts';

const MOST_PROBLEMS = 100;
/** More to choose from is a burden. */
const MOST_CHOICES = 3;

const fileSchema = v.strictObject({
  registration: v.pipe(v.string(), v.nonEmpty()),
  title: v.pipe(v.string(), v.trim(), v.nonEmpty(), v.maxLength(200)),
  problems: v.pipe(v.array(v.unknown()), v.minLength(1), v.maxLength(MOST_PROBLEMS)),
  policy: v.optional(v.record(v.string(), v.unknown()), {}),
  choice: v.optional(v.boolean(), false),
  beads: v.optional(v.picklist(BEADS), BEADS[0]),
  release: v.optional(v.picklist(RELEASES), 'onFinish'),
  points: v.optional(
    v.pipe(
      v.string(),
      v.regex(/^(?!0+(\.0+)?$)\d{1,6}(\.\d{1,2})?$/, 'must be a number above 0, in quotes'),
    ),
    '100',
  ),
});

/** An activity as it is handed in by file. `problems` in their normal form. */
export interface ActivityFile {
  readonly registration: string;
  readonly title: string;
  readonly problems: readonly WrittenProblem[];
  readonly choice: boolean;
  readonly beads: Beads;
  readonly release: Release;
  readonly points: string;
}

export type ReadActivity = { ok: true; value: ActivityFile } | { ok: false; complaints: string[] };

/** Reads an activity, or says what is wrong with it; a problem that does not fit is named with the size it needs. */
export function readActivity(written: unknown): ReadActivity {
  const file = v.safeParse(fileSchema, written);
  if (!file.success) return { ok: false, complaints: file.issues.map(complaint) };
  const { policy, ...rest } = file.output;
  if (rest.choice && (rest.problems.length < 2 || rest.problems.length > MOST_CHOICES))
    return { ok: false, complaints: [`problems: a choice is among 2 to ${MOST_CHOICES}`] };
  const problems = rest.problems.map((problem) => parseProblem(under(policy, problem)));
  const complaints = problems.flatMap((problem, index) =>
    problem.ok ? [] : [`problems[${index}]: ${JSON.stringify(problem.fault)}`],
  );
  if (complaints.length > 0) return { ok: false, complaints };
  const normal = problems.flatMap((problem) => (problem.ok ? [writeProblem(problem.value)] : []));
  return { ok: true, value: { ...rest, problems: normal } };
}

/** The policy of the activity holds for each problem that does not say otherwise. */
function under(policy: object, problem: unknown): unknown {
  if (typeof problem !== 'object' || problem === null) return problem;
  const own = (problem as { readonly policy?: unknown }).policy;
  if (own !== undefined && (typeof own !== 'object' || own === null)) return problem;
  return { ...problem, policy: { ...policy, ...own } };
}

function complaint(issue: v.BaseIssue<unknown>): string {
  return `${v.getDotPath(issue) ?? 'the file'}: ${wrong(issue)}`;
}

/** A word that is not known may be one misspelt: read over, it would leave in force what it was to change. */
function wrong({ expected, received, message }: v.BaseIssue<unknown>): string {
  if (received === 'undefined') return 'is missing';
  return expected === 'never' ? 'is not known here' : message;
}
