import * as v from 'valibot';

/** The wire schemas of the HTTP API: what a page may send, and how much. */
export const LIMITS = {
  /** Bytes of a message with actions. */
  actionsBody: 64 * 1024,
  /** Bytes of any other message. */
  body: 4 * 1024,
  actionsPerBatch: 500,
  /** Actions in an attempt; a long exercise has a few hundred, and a record must stay below MongoDB's 16 MB. */
  actionsPerAttempt: 20_000,
} as const;

const whole = (most: number) => v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(most));

/** Ids that a page makes up; never the name of something every JavaScript object has. */
const clientId = v.pipe(v.string(), v.regex(/^[0-9A-Za-z][0-9A-Za-z-]{7,63}$/));

const sentAction = v.strictObject({
  client: clientId,
  n: whole(10_000_000),
  at: whole(1e12),
  problem: whole(10_000),
  /** Read by the engine, whose words these are. */
  action: v.unknown(),
});

export const actionsMessage = v.strictObject({
  base: whole(10_000_000),
  actions: v.array(sentAction),
});

/** Which of the problems a learner picks. */
export const choiceMessage = v.strictObject({ problem: whole(100) });

export type ChoiceMessage = v.InferOutput<typeof choiceMessage>;
export type ActionsMessage = v.InferOutput<typeof actionsMessage>;
export type SentAction = ActionsMessage['actions'][number];
