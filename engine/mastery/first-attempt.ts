import type { Judgement, Work } from '../judge/work.ts';
import type { Skill } from '../vocabulary.ts';
import { type FactName, factName, type Subject } from './subject.ts';

/** The first attempt at one subject within one problem, and whether help had come before it. */
export interface FirstAttempt {
  readonly subject: Subject;
  readonly right: boolean;
  readonly aided: boolean;
}

/**
 * One entry a skill and a fact that the work attempted. Steps of one problem are not independent of
 * each other, so only the first judged attempt counts, whatever came after it. Right for what lies on
 * the child's own mat is right. A bar of the wrong kind belongs to the step that it was laid for.
 */
export function firstAttemptsOf(work: Work): FirstAttempt[] {
  const skills = new Map(work.steps.map(({ id, skill }) => [id, skill]));
  const hints = hintsIn(work, skills);
  const found = new Map<Subject, FirstAttempt>();
  for (const judgement of work.judgements) {
    const skill = skills.get(judgement.step);
    if (skill === undefined || judgement.verdict === 'neutral') continue;
    for (const subject of [skill, factAskedBy(work, judgement)]) {
      if (subject === null || found.has(subject)) continue;
      const aided = hints.some((hint) => hint.action <= judgement.action && helps(hint, skill));
      found.set(subject, { subject, right: judgement.verdict !== 'wrong', aided });
    }
  }
  return [...found.values()];
}

interface GivenHint {
  readonly action: number;
  /** Null: the hint chose its own step, which the log does not name; it is taken to help everywhere. */
  readonly skill: Skill | null;
}

const helps = (hint: GivenHint, skill: Skill): boolean =>
  hint.skill === null || hint.skill === skill;

/** A hint of level 1 only asks a question and never counts as help. */
function hintsIn(work: Work, skills: ReadonlyMap<string, Skill>): GivenHint[] {
  return work.log.flatMap(({ action, refused }, index) =>
    action.do === 'hint' && action.level > 1 && refused === undefined
      ? [{ action: index, skill: skills.get(action.step ?? '') ?? null }]
      : [],
  );
}

/**
 * The fact behind a judgement of a fact's value; null when there is none, and when the child worked
 * with another digit than the problem's, so that another fact was asked.
 */
function factAskedBy({ problem }: Work, { step, verdict }: Judgement): FactName | null {
  const [kind, row, column] = step.split(':');
  if (kind !== 'fact' || verdict === 'follows') return null;
  const a = problem.multiplicand.digits[Number(column)];
  const b = problem.multiplier.digits[Number(row)];
  return a && b ? factName(a, b) : null;
}
