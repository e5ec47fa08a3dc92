import type { Skill } from '../vocabulary.ts';

/**
 * Chances of the tracing model, without unit, each from 0 to 1, `guess + slip` below 1 (else a right
 * answer would speak against knowing). They are fixed and published, never fitted to a class: several
 * sets of them draw the same learning curve and disagree on who knows (Beck and Chang 2007), and a
 * class is far too small to tell them apart.
 */
export interface TracingParameters {
  /** Chance that the child knows it before the first problem. */
  readonly prior: number;
  /** Chance of learning it from one problem to the next. */
  readonly learn: number;
  /** Chance of a right attempt without knowing. */
  readonly guess: number;
  /** Chance of a wrong attempt in spite of knowing. */
  readonly slip: number;
}

/*
 * Model: Corbett and Anderson, "Knowledge tracing: modeling the acquisition of procedural knowledge",
 * User Modeling and User-Adapted Interaction 4 (1995), 253–278. The values are our own proposal for
 * constructed answers with material, where guessing is rare: prior 0.25 to 0.40, learn 0.10 to 0.15,
 * slip 0.10, guess 0.05 to 0.10 for placing and exchanging, 0.05 for a fact, 0.02 for a whole number.
 */
const PLACING: TracingParameters = { prior: 0.3, learn: 0.1, guess: 0.1, slip: 0.1 };
const EXCHANGING: TracingParameters = { prior: 0.3, learn: 0.1, guess: 0.05, slip: 0.1 };
const WHOLE_NUMBER: TracingParameters = { prior: 0.3, learn: 0.1, guess: 0.02, slip: 0.1 };

export const FACT_PARAMETERS: TracingParameters = {
  prior: 0.4,
  learn: 0.1,
  guess: 0.05,
  slip: 0.1,
};

export const SKILL_PARAMETERS: Readonly<Record<Skill, TracingParameters>> = {
  building: PLACING,
  laying: PLACING,
  kind: PLACING,
  counting: EXCHANGING,
  exchanging: EXCHANGING,
  sliding: PLACING,
  saying: WHOLE_NUMBER,
  reading: WHOLE_NUMBER,
  fact: FACT_PARAMETERS,
  place: PLACING,
  partial: EXCHANGING,
  placeholder: PLACING,
  adding: EXCHANGING,
  point: PLACING,
  worth: PLACING,
  finding: PLACING,
};

/** Known from this probability on (customary since Corbett and Anderson 1995). Range 0 to 1. */
export const KNOWN_FROM = 0.95;

/**
 * No claim before so many problems on so many days (own rule): two or three right answers in a row can
 * carry the probability past 0.95, and all may come from one good morning. Units: problems, days.
 */
export const FEWEST_PROBLEMS = 4;
export const FEWEST_DAYS = 2;
