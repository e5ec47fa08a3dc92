import type { Say } from '../judge/work.ts';
import type { WrittenSpecification } from '../problems/index.ts';
import type { Skill, Stage } from '../vocabulary.ts';
import { STAGE_SKILLS, stageAfter } from './stage-skills.ts';
import type { Standing } from './standing.ts';
import { digitsOfFact } from './subject.ts';

/** One choice among two or three: what might be done, why, and problems for it (null: none are made). */
export interface Proposal {
  readonly work: 'presentAgain' | 'practise' | 'facts' | 'refresh' | 'forward' | 'again' | 'open';
  readonly stage: Stage;
  readonly reason: Say;
  readonly specification: WrittenSpecification | null;
}

/** A skill known and not met for so many days is worth meeting again (own proposal). */
const LONG_AGO = 14;
/** So many of the latest attempts wrong, and showing it once more helps more than another sheet. */
const WRONG_IN_A_ROW = 3;
const MOST_FACTS = 2;
const MOST_PROPOSALS = 3;

/**
 * Two or three choices for the guide and the child, each with its reason: never an order. What needs
 * care comes first in the list; the last resort is more of the same, or the free mat.
 * @param at where the child works now; from the free mat the choices are those of `bars`
 * @param today days since 1 January 1970 in the school's own time zone
 */
export function nextWork(standings: readonly Standing[], at: Stage, today: number): Proposal[] {
  const stage = at === 'open' ? 'bars' : at;
  const asked = new Set<string>(STAGE_SKILLS[stage]);
  const here = standings.filter(({ subject }) => asked.has(subject));
  const shaky = weakestFirst(here.filter(({ claim }) => claim === 'learning'));
  const stuck = shaky.find(({ latest }) => isStuck(latest));
  const unsure = shaky.find((standing) => standing !== stuck);
  return [
    ...(stuck ? [presentAgain(stage, stuck)] : []),
    ...(unsure ? [practise(stage, unsure)] : []),
    ...weakFacts(standings, stage),
    ...forward(here, stage),
    ...refresh(standings, stage, today),
    again(here, stage),
    FREE_MAT,
  ].slice(0, MOST_PROPOSALS);
}

const isStuck = (latest: readonly boolean[]): boolean =>
  latest.length >= WRONG_IN_A_ROW && latest.slice(-WRONG_IN_A_ROW).every((right) => !right);

const weakestFirst = (standings: readonly Standing[]): Standing[] =>
  [...standings].sort((one, other) => (one.probability ?? 0) - (other.probability ?? 0));

const countsOf = ({ problems, right, days, lastDay }: Standing) => ({
  problems,
  right,
  days,
  lastDay,
});

const presentAgain = (stage: Stage, standing: Standing): Proposal => ({
  work: 'presentAgain',
  stage,
  reason: {
    key: 'next.presentAgain',
    values: { skill: standing.subject, wrong: WRONG_IN_A_ROW, ...countsOf(standing) },
  },
  specification: null,
});

const practise = (stage: Stage, standing: Standing): Proposal => ({
  work: 'practise',
  stage,
  reason: { key: 'next.practise', values: { skill: standing.subject, ...countsOf(standing) } },
  specification: specificationFor(stage, standing.subject as Skill),
});

/** Facts are named together: one sheet can hold two, and a child that errs in one errs in others. */
function weakFacts(standings: readonly Standing[], stage: Stage): Proposal[] {
  const facts = standings.filter(
    ({ subject, claim }) => digitsOfFact(subject) !== null && claim === 'learning',
  );
  if (facts.length === 0) return [];
  const named = weakestFirst(facts).slice(0, MOST_FACTS);
  const values = {
    facts: named.map(({ subject }) => subject).join(' '),
    problems: named.reduce((sum, { problems }) => sum + problems, 0),
    right: named.reduce((sum, { right }) => sum + right, 0),
  };
  const required = named.map(({ subject }) => digitsOfFact(subject)!);
  const where = STAGE_SKILLS[stage].includes('fact') ? stage : 'facts';
  const specification = { ...specificationFor(where, 'fact'), facts: { required } };
  return [{ work: 'facts', stage: where, reason: { key: 'next.facts', values }, specification }];
}

/** Only when every skill of the stage may be called known. */
function forward(here: readonly Standing[], stage: Stage): Proposal[] {
  const next = stageAfter(stage);
  const skills = STAGE_SKILLS[stage];
  const known = here.filter(({ claim }) => claim === 'known').length;
  if (next === null || known < skills.length) return [];
  const reason = { key: 'next.forward', values: { stage, skills: known, next } };
  return [{ work: 'forward', stage: next, reason, specification: specificationFor(next, null) }];
}

function refresh(standings: readonly Standing[], stage: Stage, today: number): Proposal[] {
  const old = standings
    .filter(({ claim, lastDay }) => claim === 'known' && today - lastDay >= LONG_AGO)
    .filter(({ subject }) => digitsOfFact(subject) === null)
    .sort((one, other) => one.lastDay - other.lastDay)[0];
  if (old === undefined) return [];
  const skill = old.subject as Skill;
  const where = STAGE_SKILLS[stage].includes(skill) ? stage : stageOfSkill(skill);
  const values = { skill, ago: today - old.lastDay, ...countsOf(old) };
  const specification = specificationFor(where, skill);
  return [
    { work: 'refresh', stage: where, reason: { key: 'next.refresh', values }, specification },
  ];
}

const stageOfSkill = (skill: Skill): Stage =>
  (Object.keys(STAGE_SKILLS) as Stage[]).find((stage) => STAGE_SKILLS[stage].includes(skill)) ??
  'open';

/** More of the same; while it is too early for a claim, that is the reason. */
function again(here: readonly Standing[], stage: Stage): Proposal {
  const early = here.filter(({ claim }) => claim === 'tooEarly').length;
  const unseen = STAGE_SKILLS[stage].length - here.length;
  const values = { stage, skills: early + unseen };
  const key = early + unseen > 0 ? 'next.tooEarly' : 'next.again';
  const specification = specificationFor(stage, null);
  return { work: 'again', stage, reason: { key, values }, specification };
}

const FREE_MAT: Proposal = {
  work: 'open',
  stage: 'open',
  reason: { key: 'next.open', values: {} },
  specification: null,
};

/** Problems of the usual size for a stage that ask for a skill; null where a stage has no numbers. */
function specificationFor(stage: Stage, skill: Skill | null): WrittenSpecification | null {
  if (stage === 'walk' || stage === 'open') return null;
  const rows = stage === 'bars1' ? 1 : 2;
  const usual = { stage, multiplicand: { digits: 3 }, multiplier: { digits: rows } };
  return { ...usual, ...(skill === null ? {} : FOCUS[skill]) };
}

/** What makes a problem ask for a skill more than most do. */
const FOCUS: Readonly<Partial<Record<Skill, WrittenSpecification>>> = {
  counting: { largestPile: { from: 20 } },
  exchanging: { exchanges: { from: 1 } },
  placeholder: { multiplier: { digits: { from: 2, to: 3 } } },
  point: { multiplicand: { digits: 3, decimals: { from: 1, to: 2 } } },
};
