/** The words of the engine, each once: the types are derived from the lists. */
export const STAGES = [
  'walk',
  'build',
  'bars1',
  'bars',
  'facts',
  'record',
  'cells',
  'paper',
  'open',
] as const;
export type Stage = (typeof STAGES)[number];

export const EDGES = ['bottom', 'right'] as const;
export type Edge = (typeof EDGES)[number];

export const SLOTS = ['own', 'fromRight'] as const;
export type Slot = (typeof SLOTS)[number];

export const CONTROLS = ['checkpoint', 'eachStep', 'end', 'silent'] as const;
export type Control = (typeof CONTROLS)[number];

export const LAYINGS = ['either', 'turns', 'fact'] as const;
export type Laying = (typeof LAYINGS)[number];

export const STATUSES = ['first', 'corrected', 'follows', 'hinted', 'notRight', 'open'] as const;
export type Status = (typeof STATUSES)[number];

export const VERDICTS = ['right', 'wrong', 'follows', 'neutral'] as const;
export type Verdict = (typeof VERDICTS)[number];

/** What a step shows. `kind` is the skill of a judgement only: a bar that the laying policy excludes. */
export const SKILLS = [
  'building',
  'laying',
  'kind',
  'counting',
  'exchanging',
  'sliding',
  'saying',
  'reading',
  'fact',
  'place',
  'partial',
  'placeholder',
  'adding',
  'point',
  'worth',
  'finding',
] as const;
export type Skill = (typeof SKILLS)[number];

/** Why real material could not do an action. */
export const REFUSALS = [
  'offTheMat',
  'offTheEdge',
  'offThePaper',
  'nothingThere',
  'notEnoughBars',
  'emptyPile',
  'notTen',
  'lineNotBegun',
  'nothingToFinish',
  'nothingToUndo',
  'finished',
  'noSuchPrompt',
  'noSuchStep',
] as const;
export type RefusalCode = (typeof REFUSALS)[number];

/** What a move of the worked presentation does, as the key of its caption. */
export const MOVES = [
  'layTile',
  'liftTile',
  'layBars',
  'liftBars',
  'count',
  'makeTen',
  'exchange',
  'slide',
  'sayRow',
  'sayPrompt',
  'sayNumber',
  'begin',
  'writePartial',
  'writeZero',
  'writeCarry',
  'writeProduct',
  'writeSum',
  'writeSquare',
  'rub',
  'point',
  'finishRow',
  'finishProduct',
  'finishProblem',
  'undo',
] as const;
export type Move = (typeof MOVES)[number];

/** Hints: 1 asks, 2 shows where, 3 shows how. */
export const HINT_LEVELS = [1, 2, 3] as const;
export type HintLevel = (typeof HINT_LEVELS)[number];
