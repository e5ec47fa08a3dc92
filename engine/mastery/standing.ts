import type { Skill } from '../vocabulary.ts';
import type { Occasion } from './occasion.ts';
import {
  FACT_PARAMETERS,
  FEWEST_DAYS,
  FEWEST_PROBLEMS,
  KNOWN_FROM,
  SKILL_PARAMETERS,
  type TracingParameters,
} from './parameters.ts';
import { digitsOfFact, type Subject } from './subject.ts';
import { knownAfter } from './tracing.ts';

/**
 * How a child stands with one subject. Counts and dates come first and are to be shown first; the
 * probability is a second opinion, and the guide's judgement stands above both.
 */
export interface Standing {
  readonly subject: Subject;
  /** Problems whose first attempt was unaided, and how many of those attempts were right. */
  readonly problems: number;
  readonly right: number;
  /** Different days of those problems. */
  readonly days: number;
  /** Problems in which help came before the first attempt: they count for nothing else. */
  readonly aided: number;
  /** First and last day on which the subject was met at all. */
  readonly firstDay: number;
  readonly lastDay: number;
  /** The last unaided first attempts, oldest first, at most five. */
  readonly latest: readonly boolean[];
  readonly claim: 'tooEarly' | 'learning' | 'known';
  /** Of knowing, 0 to 1; null as long as it is too early for a claim. */
  readonly probability: number | null;
}

const LATEST = 5;

/** One standing a subject met, in the order of first meeting. Days may come in any order. */
export function standingsOf(occasions: readonly Occasion[]): Standing[] {
  const bySubject = new Map<Subject, Occasion[]>();
  for (const occasion of oncePerProblem(inOrderOfDays(occasions))) {
    const known = bySubject.get(occasion.subject);
    if (known) known.push(occasion);
    else bySubject.set(occasion.subject, [occasion]);
  }
  return [...bySubject].map(([subject, met]) => standingOf(subject, met));
}

/** Within a day the order given is the order of work. */
const inOrderOfDays = (occasions: readonly Occasion[]): Occasion[] =>
  [...occasions].sort((one, other) => one.day - other.day);

/** Only the first attempt of a problem counts, even when its work went on for days. */
function oncePerProblem(occasions: readonly Occasion[]): Occasion[] {
  const seen = new Set<string>();
  return occasions.filter(({ problem, subject }) => {
    const name = `${subject} ${problem}`;
    return seen.has(name) ? false : seen.add(name);
  });
}

function standingOf(subject: Subject, met: readonly Occasion[]): Standing {
  const unaided = met.filter(({ aided }) => !aided);
  const answers = unaided.map(({ right }) => right);
  const days = new Set(unaided.map(({ day }) => day)).size;
  const early = answers.length < FEWEST_PROBLEMS || days < FEWEST_DAYS;
  const parameters = parametersOf(subject);
  const probability = answers.reduce(
    (known, right) => knownAfter(known, right, parameters),
    parameters.prior,
  );
  return {
    subject,
    problems: answers.length,
    right: answers.filter(Boolean).length,
    days,
    aided: met.length - unaided.length,
    firstDay: met[0]!.day,
    lastDay: met.at(-1)!.day,
    latest: answers.slice(-LATEST),
    claim: early ? 'tooEarly' : probability >= KNOWN_FROM ? 'known' : 'learning',
    probability: early ? null : probability,
  };
}

export const parametersOf = (subject: Subject): TracingParameters =>
  digitsOfFact(subject) ? FACT_PARAMETERS : SKILL_PARAMETERS[subject as Skill];
