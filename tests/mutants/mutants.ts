/** One-line mistakes that somebody could make, each with the tests that must notice. */
export interface Mutant {
  readonly file: string;
  /** What goes wrong for whom. */
  readonly breaks: string;
  /** Stands in the file exactly once. */
  readonly line: string;
  readonly becomes: string;
  readonly tests: readonly string[];
}

const group =
  (tests: readonly string[]) =>
  (file: string, breaks: string, line: string, becomes: string): Mutant => ({
    file,
    breaks,
    line,
    becomes,
    tests,
  });

const judging = group([
  'tests/engine/physics.test.ts',
  'tests/engine/statuses.test.ts',
  'tests/engine/replay.test.ts',
  'tests/engine/unworked.test.ts',
  'tests/engine/numerals.test.ts',
  'tests/engine/ten-left.test.ts',
  'tests/engine/vectors.test.ts',
]);
const slipping = group(['tests/engine/slips.test.ts']);
const writing = group(['tests/engine/cells.test.ts']);
const remembering = group(['tests/engine/memory.test.ts']);
const recording = group(['tests/engine/record.test.ts']);
const drawing = group(['tests/problems/draw.test.ts', 'tests/problems/generate.test.ts']);
const attempting = group(['tests/mastery/first-attempt.test.ts']);
const naming = group(['tests/patterns/explain.test.ts']);
const walking = group(['tests/patterns/lying.test.ts']);
const onThePage = group(['tests/client/unsent.test.ts', 'tests/client/sender.test.ts']);
const launching = group([
  'tests/lti/refused.test.ts',
  'tests/lti/launch.test.ts',
  'tests/lti/confirm.test.ts',
]);
const keeping = group(['tests/server/attempts.test.ts', 'tests/server/scores.test.ts']);
const tracing = group(['tests/mastery/tracing.test.ts', 'tests/mastery/standing.test.ts']);
const making = group(['tests/problems/count.test.ts', 'tests/problems/conflict.test.ts']);
const explaining = group(['tests/patterns/catalogue.test.ts']);
const holding = group(['tests/client/unsent.test.ts']);
const admitting = group(['tests/server/sessions.test.ts']);
const sending = group(['tests/delivery/row.test.ts', 'tests/delivery/sender.test.ts']);

export const mutants: readonly Mutant[] = [
  // Physics
  judging(
    'engine/mat/bars.ts',
    'ten-bars appear from nowhere in an exchange',
    "if (pile.bars[TEN]! < action.tens) return 'notEnoughBars';",
    '',
  ),
  judging(
    'engine/mat/bars.ts',
    'nine beads make a ten',
    "if (beads !== 10) return 'notTen';",
    "if (beads < 9) return 'notTen';",
  ),
  judging(
    'engine/mat/bars.ts',
    'a count of a full ten leaves a bar behind',
    'bars[TEN] = Math.floor(total / 10);',
    'bars[TEN] = Math.ceil(total / 10);',
  ),
  judging(
    'engine/mat/bars.ts',
    'a slide loses what lay there before',
    'bars[kind]! += others.bars[kind]!;',
    'bars[kind] = others.bars[kind]!;',
  ),
  judging(
    'engine/mat/apply.ts',
    'work goes on after the finish',
    "if (position.finished.problem) return 'finished';",
    '',
  ),
  // Judge
  slipping(
    'engine/judge/exchanging.ts',
    'an exchange two places up is called right',
    'amountAt(action.ones, to) - amountAt(action.tens, from + 1);',
    'amountAt(action.ones, from + 1) - amountAt(action.tens, from + 1);',
  ),
  slipping(
    'engine/judge/counting.ts',
    'a wrong count is called right',
    'if (total === due) {',
    'if (total <= due) {',
  ),
  judging(
    'engine/judge/sliding.ts',
    'a slide off the diagonal is called right',
    'if (from === to) {\n    const verdict',
    'if (from <= to) {\n    const verdict',
  ),
  judging(
    'engine/judge/settling.ts',
    'ten left on a square goes unnoticed at the finish',
    'if (value < 10 || stuck) continue;',
    'if (value <= 10 || stuck) continue;',
  ),
  judging(
    'engine/judge/findings.ts',
    'a check charges what is not done yet',
    "if (!wrong && (moment.at === 'now' || found.due === null)) return false;",
    'if (!wrong && found.due === null) return false;',
  ),
  judging(
    'engine/judge/status.ts',
    'a corrected step counts as right at once',
    "if (charged.has(step)) return 'corrected';",
    '',
  ),
  judging(
    'engine/judge/status.ts',
    'a hint leaves no trace',
    "if (hinted.has(step)) return 'hinted';",
    '',
  ),
  slipping(
    'engine/judge/saying.ts',
    'a saying once right is held against a later slip',
    "if (before?.given === text) return finding('right', before.follows, text, text);",
    '',
  ),
  judging(
    'engine/judge/run.ts',
    'the mat answers only at a finish, never at a check',
    'asked = true;',
    "asked = action.do === 'finish';",
  ),
  judging(
    'engine/judge/run.ts',
    'undo takes back two actions',
    'run.state = run.past.pop()!;',
    'run.state = run.past.pop() && run.past.pop()!;',
  ),
  writing(
    'engine/judge/paper/facts-read.ts',
    'a row of facts is read the other way round at every tie',
    'stayIn(plan, other, past) > stayIn(plan, usual, past);',
    'true;',
  ),
  writing(
    'engine/judge/paper/facts-faults.ts',
    'a right digit of a named fact on a wrong square is called a wrong fact',
    "digits.includes(entry.digit) ? 'where' : 'fact'",
    "digits.length === 0 ? 'where' : 'fact'",
  ),
  recording(
    'engine/judge/paper/recorded.ts',
    'a row written before a slip is held against the mat after it',
    'debts.filter(({ act }) => act <= last)',
    'debts.filter(({ act }) => act >= 0)',
  ),
  // Problems
  drawing(
    'engine/problems/random.ts',
    'the same problem comes twice in a set',
    'moved.set(other, moved.get(index) ?? index);',
    '',
  ),
  drawing(
    'engine/problems/digits.ts',
    'an exchange is not counted where a pile reaches exactly ten',
    'filter((pile) => pile >= 10)',
    'filter((pile) => pile > 10)',
  ),
  // Mastery
  tracing(
    'engine/mastery/standing.ts',
    'a child is called able after one good day',
    'answers.length < FEWEST_PROBLEMS || days < FEWEST_DAYS',
    'answers.length < FEWEST_PROBLEMS',
  ),
  attempting(
    'engine/mastery/first-attempt.ts',
    'a mended answer takes the place of the first',
    'subject === null || found.has(subject)',
    'subject === null',
  ),
  // Patterns
  naming(
    'engine/patterns/explain.ts',
    'what the work showed is said to be not tested',
    '(is ? [] : [id])',
    '(is ? [id] : [])',
  ),
  walking(
    'engine/patterns/evidence/lying.ts',
    'ten-bars are read to vanish in a slide',
    'for (let kind = 1; kind <= TEN; kind += 1)',
    'for (let kind = 1; kind < TEN; kind += 1)',
  ),
  // The child's page
  onThePage(
    'client/work/ledger.ts',
    'what is not saved yet is dropped at an acknowledgement',
    'unsent: ledger.unsent.filter((sent) => !stored(sent)),',
    'unsent: [],',
  ),
  onThePage(
    'client/work/unsent-store.ts',
    'what lay unsent for two weeks stays on the device for good',
    '?? 0) < LIFETIME',
    '?? 0) < Number.POSITIVE_INFINITY',
  ),
  onThePage(
    'client/work/sender.ts',
    'a busy server makes the page give up',
    'status < 500 && status !== 408 && status !== 429',
    'status < 500 && status !== 408',
  ),
  // Score
  judging(
    'engine/score.ts',
    'steps that are worth nothing are left out of the whole',
    'available = plus(available, ONE);',
    "if (status !== 'open') available = plus(available, ONE);",
  ),
  judging(
    'engine/numerals/fraction.ts',
    'half a hundredth is rounded down',
    'const scaled = (2n * num * scale + den) / (2n * den);',
    'const scaled = (num * scale) / den;',
  ),
  keeping(
    'server/attempts/finish.ts',
    "a teacher's trial lands in the gradebook",
    "if (trial) return 'trial';",
    '',
  ),
  keeping(
    'server/attempts/batch.ts',
    'what was sent again is applied again',
    'if (entry.n < due) continue;',
    '',
  ),
  keeping(
    'server/attempts/store.ts',
    'two devices overwrite each other',
    '{ ...named(owner), length: base },',
    '{ ...named(owner) },',
  ),
  keeping(
    'server/attempts/work.ts',
    'what material refuses is judged instead of set aside',
    'if (aside !== null) return { ...entry, aside };',
    '',
  ),
  sending(
    'server/delivery/row.ts',
    'two marks go out within the same second',
    'row.desired.timestamp, row.highest + SPACING);',
    'row.desired.timestamp, row.highest);',
  ),
  sending(
    'server/delivery/row.ts',
    'a mark finished meanwhile keeps the old revision',
    'row.desired.revision + 1, timestamp)',
    'row.desired.revision, timestamp)',
  ),
  // Guard
  launching(
    'server/lti/store.ts',
    'a login can be used twice',
    'return logins.findOneAndDelete({ _id: state,',
    'return logins.findOne({ _id: state,',
  ),
  launching(
    'server/lti/claims.ts',
    'an expired token opens a session',
    "return isTime(exp) && exp + LEEWAY > now ? null : 'expired';",
    "return isTime(exp) ? null : 'expired';",
  ),
  launching(
    'server/lti/claims.ts',
    'a token of another login is taken',
    'return isId(value) && sameDigest(value, expected.nonce) ?',
    'return isId(value) ?',
  ),
  launching(
    'server/lti/claims.ts',
    'a token for several tools is taken',
    'return named.length === 1 || azp !== undefined ?',
    'return named.length >= 1 || azp !== undefined ?',
  ),
  launching(
    'server/lti/claims.ts',
    'a token for another party is taken',
    'return azp === undefined || azp === registration.clientId ?',
    'return azp === undefined || azp !== "" ?',
  ),
  launching(
    'server/lti/claims.ts',
    'a deployment nobody approved is let in',
    'const known = registration.deployments.includes(id);',
    'const known = id.length > 0;',
  ),
  launching(
    'server/lti/confirm.ts',
    'a browser without proof gets the session',
    'if (!proofs.some((one) => sameDigest(one, pending.proof))) {',
    'if (!proofs.every((one) => sameDigest(one, pending.proof))) {',
  ),

  // Mastery
  tracing(
    'engine/mastery/tracing.ts',
    'nobody learns by working',
    'return believed + (1 - believed) * learn;',
    'return believed;',
  ),
  tracing(
    'engine/mastery/tracing.ts',
    'guessing and knowing may count for the same',
    'if (parameters.guess + parameters.slip >= 1)',
    'if (parameters.guess + parameters.slip > 1)',
  ),
  tracing(
    'engine/mastery/standing.ts',
    'what was done with help counts as known',
    'const unaided = met.filter(({ aided }) => !aided);',
    'const unaided = met;',
  ),
  tracing(
    'engine/mastery/standing.ts',
    'a second attempt at the same problem counts again',
    'return seen.has(name) ? false : seen.add(name);',
    'return seen.add(name);',
  ),

  // Problems to order
  making(
    'engine/problems/digit-graph.ts',
    'problems with a zero are never counted',
    'for (let digit = 0; digit < 10; digit++) {',
    'for (let digit = 1; digit < 10; digit++) {',
  ),
  making(
    'engine/problems/conflict.ts',
    'a conflict is told with more clauses than it takes',
    'for (let size = 0; ; size++) {',
    'for (let size = 5; ; size++) {',
  ),

  // Error patterns
  explaining(
    'engine/patterns/catalogue/row-not-moved-over.ts',
    'a row that was moved is taken for one that was not',
    "beliefs: { '': { shift: () => 0 } },",
    "beliefs: { '': { shift: () => 1 } },",
  ),
  explaining(
    'engine/patterns/catalogue/carry-multiplies.ts',
    'a carry that adds is taken for one that multiplies',
    'carry > 0 ? handedOn(a * carry, last) : right',
    'carry > 0 ? handedOn(a + carry, last) : right',
  ),

  // Keeping on the device
  holding(
    'client/work/ledger.ts',
    'what is saved is sent again after a reload',
    'unsent: without(held, known),',
    'unsent: held,',
  ),
  holding(
    'client/work/ledger.ts',
    'what was acknowledged is forgotten',
    'known: [...ledger.known, ...entries],',
    'known: ledger.known,',
  ),

  // Memory
  remembering(
    'engine/judge/memo.ts',
    'what is remembered is taken for what it is not: one thing that decides it is not looked at',
    'known.a === a && known.b === b && ',
    'known.a === a && ',
  ),

  // Sessions
  admitting(
    'server/sessions/service.ts',
    'a role that was taken away still counts',
    'return enrolment?.role === session.role;',
    'return enrolment !== null;',
  ),
];
