import * as v from 'valibot';
import { parseProblem, type WrittenProblem, writeProblem } from '../../engine/index.ts';
import { RELEASES, type Release } from './schema.ts';

const MOST_PROBLEMS = 100;

const fileSchema = v.object({
  registration: v.pipe(v.string(), v.nonEmpty()),
  title: v.pipe(v.string(), v.trim(), v.nonEmpty(), v.maxLength(200)),
  problems: v.pipe(v.array(v.unknown()), v.minLength(1), v.maxLength(MOST_PROBLEMS)),
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
  readonly release: Release;
  readonly points: string;
}

export type ReadActivity = { ok: true; value: ActivityFile } | { ok: false; complaints: string[] };

/** Reads an activity, or says what is wrong with it; a problem that does not fit is named with the size it needs. */
export function readActivity(written: unknown): ReadActivity {
  const file = v.safeParse(fileSchema, written);
  if (!file.success) return { ok: false, complaints: file.issues.map(complaint) };
  const problems = file.output.problems.map(parseProblem);
  const complaints = problems.flatMap((problem, index) =>
    problem.ok ? [] : [`problems[${index}]: ${JSON.stringify(problem.fault)}`],
  );
  if (complaints.length > 0) return { ok: false, complaints };
  const normal = problems.flatMap((problem) => (problem.ok ? [writeProblem(problem.value)] : []));
  return { ok: true, value: { ...file.output, problems: normal } };
}

function complaint(issue: v.BaseIssue<unknown>): string {
  return `${v.getDotPath(issue) ?? 'the file'}: ${issue.message}`;
}
