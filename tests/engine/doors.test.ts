import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as child from '../../engine/child.ts';
import * as engine from '../../engine/index.ts';
import { anyAction } from './any-action.ts';
import { problemOf } from './play.ts';

const junk = fc.anything({ maxDepth: 3, withBigInt: true, withNullPrototype: true });

/** What may fail by a user's doing says by code what, and names the argument. */
function expectNamed(result: unknown): void {
  const { ok, fault } = result as engine.Result<unknown> & { fault?: engine.Fault };
  if (ok) return;
  expect(fault).toMatchObject({ code: expect.any(String), at: expect.any(String) });
}

/** Functions that take anything at all. */
const OUTSIDE: Readonly<Record<string, (value: unknown) => unknown>> = {
  parseAction: engine.parseAction,
  parseOccasions: engine.parseOccasions,
  parseProblem: engine.parseProblem,
  parseSpecification: engine.parseSpecification,
};

const problems = fc
  .record({
    stage: fc.constantFrom(...engine.STAGES),
    multiplicand: fc.nat({ max: 9_999 }),
    multiplier: fc.nat({ max: 99 }),
    control: fc.constantFrom(...engine.CONTROLS),
  })
  .map(({ stage, multiplicand, multiplier, control }) =>
    stage === 'walk'
      ? problemOf({ stage, seed: multiplicand, policy: { control } })
      : problemOf({
          stage,
          multiplicand: `${multiplicand}`,
          multiplier: `${stage === 'bars1' ? multiplier % 10 : multiplier}`,
          policy: { control },
        }),
  );

/** Anything that was done, sensible or not, on any problem. */
const works = fc
  .tuple(problems, fc.array(anyAction(), { maxLength: 25 }))
  .map(([problem, actions]) => engine.replay(problem, actions));

const stages = fc.constantFrom(...engine.STAGES);
const squares = fc.tuple(fc.integer({ min: -2, max: 9 }), fc.integer({ min: -2, max: 15 }));
const numbers = fc.oneof(fc.double(), fc.integer(), fc.string(), fc.constant('12.5'));
const fractions = fc.record({ num: fc.bigInt({ min: 0n }), den: fc.bigInt({ min: 1n }) });
const occasions = fc.array(
  fc.record({
    problem: fc.string(),
    day: fc.nat({ max: 30_000 }),
    subject: fc.constantFrom(...engine.SKILLS, '6x7' as const),
    right: fc.boolean(),
    aided: fc.boolean(),
  }),
  { maxLength: 12 },
);

function specification(written: Record<string, unknown>): engine.Specification {
  const parsed = engine.parseSpecification(written);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

const specifications = fc
  .record({
    multiplicand: fc.record({ digits: fc.integer({ min: 1, max: 3 }) }),
    multiplier: fc.record({ digits: fc.integer({ min: 1, max: 2 }) }),
    largestPile: fc.integer({ min: 1, max: 89 }),
    count: fc.integer({ min: 1, max: 20 }),
  })
  .map(specification);

type Held = () => void;
const holds =
  <T>(values: fc.Arbitrary<T>, check: (value: T) => void, numRuns = 40): Held =>
  () =>
    fc.assert(
      fc.property(values, (value) => {
        check(value);
      }),
      { numRuns },
    );

/** All others take what those gave: nothing of it makes them throw, hang or answer what is not so. */
const INSIDE: Readonly<Record<string, Held>> = {
  act: holds(fc.tuple(works, anyAction()), ([work, action]) => {
    const after = engine.act(work, action);
    expect(after.log).toHaveLength(work.log.length + 1);
    const refused = after.log.at(-1)!.refused ?? null;
    expect(refused).toBe(engine.refusalOf(work, action));
  }),
  actAll: holds(fc.tuple(works, fc.array(anyAction(), { maxLength: 9 })), ([work, actions]) =>
    expect(engine.actAll(work, actions)).toEqual(actions.reduce(engine.act, work)),
  ),
  canPlay: holds(stages, (stage) => {
    const named = ['bars', 'record', 'cells', 'paper'].includes(stage);
    expect(engine.canPlay(stage)).toBe(named);
  }),
  countProblems: holds(specifications, (asked) => {
    const counted = engine.countProblems(asked);
    expectNamed(counted);
    if (counted.ok) expect(counted.value).toBeGreaterThan(0n);
  }),
  designSet: holds(
    stages.filter((stage) => !engine.canPlay(stage)),
    (stage) => {
      const fault = { code: 'notPlayable', at: 'stage' };
      expect(engine.designSet(stage)).toEqual({ ok: false, fault });
    },
  ),
  digitsOfFact: holds(fc.constantFrom(...engine.SKILLS), (skill) =>
    expect(engine.digitsOfFact(skill)).toBeNull(),
  ),
  exampleOf: holds(specifications, (asked) => {
    const example = engine.exampleOf(asked);
    expectNamed(example);
    expect(example.ok).toBe(engine.countProblems(asked).ok);
  }),
  explain: holds(
    fc.array(works, { maxLength: 4 }),
    (done) => {
      for (const { posterior } of engine.explain(done).reported)
        expect(posterior).toBeGreaterThan(0.9);
    },
    20,
  ),
  firstAttemptsOf: holds(works, (work) => {
    for (const { subject } of engine.firstAttemptsOf(work)) expect(typeof subject).toBe('string');
  }),
  fractionText: holds(fractions, (fraction) =>
    expect(engine.fractionText(fraction)).toMatch(/^\d+(\/\d+)?$/),
  ),
  hint: holds(
    fc.tuple(works, fc.constantFrom(1, 2, 3), fc.option(fc.string(), { nil: undefined })),
    ([work, level, step]) => {
      const told = engine.hint(work, level, step);
      if (told !== null) expect(work.steps.map(({ id }) => id)).toContain(told.step);
    },
  ),
  makeProblems: holds(specifications, (asked) => {
    const made = engine.makeProblems(asked);
    expectNamed(made);
    if (made.ok) expect(made.value.problems.length).toBeLessThanOrEqual(20);
  }),
  nextMove: holds(works, (work) => {
    const move = engine.nextMove(work);
    expect(move === null).toBe(work.finished.problem);
    if (move !== null) expect(engine.refusalOf(work, move.action)).toBeNull();
  }),
  nextWork: holds(fc.tuple(occasions, stages, fc.nat()), ([met, stage, today]) => {
    const proposals = engine.nextWork(engine.standingsOf(met), stage, today);
    expect(proposals.length).toBeGreaterThanOrEqual(1);
    expect(proposals.length).toBeLessThanOrEqual(3);
  }),
  onMat: holds(squares, (square) => {
    const mat = { rows: 4, columns: 9, origin: -2 };
    const [row, column] = square;
    const on = row >= 0 && row < 4 && column >= 0 && column < 9;
    expect(engine.onMat(mat, square)).toBe(on);
  }),
  pileValue: holds(fc.array(fc.nat({ max: 99 }), { minLength: 10, maxLength: 10 }), (bars) => {
    const beads = bars.reduce((sum, count, index) => sum + count * (index + 1), 0);
    expect(engine.pileValue({ bars })).toBe(beads);
  }),
  placeName: holds(fc.integer({ min: -18, max: 18 }), (place) => {
    const { hierarchy, family } = engine.placeName(place);
    expect(3 * Math.abs(family) + hierarchy).toBe(Math.abs(place));
  }),
  placeOf: holds(squares, (square) =>
    expect(engine.placeOf({ rows: 4, columns: 9, origin: -2 }, square)).toBe(
      square[0] + square[1] - 2,
    ),
  ),
  refusalOf: holds(fc.tuple(works, anyAction()), ([work, action]) => {
    const refusal = engine.refusalOf(work, action);
    if (refusal !== null) expect(engine.REFUSALS).toContain(refusal);
  }),
  replay: holds(works, (work) =>
    expect(
      engine.replay(
        work.problem,
        work.log.map(({ action }) => action),
      ),
    ).toEqual(work),
  ),
  score: holds(fc.array(works, { maxLength: 3 }), (done) => {
    const { num, den } = engine.score(done).fraction;
    expect(num >= 0n && num <= den).toBe(true);
  }),
  scoreBySkill: holds(works, (work) => {
    const parts = Object.values(engine.scoreBySkill([work]));
    const available = parts.reduce((sum, part) => sum + part.available.num, 0n);
    expect(available).toBe(BigInt(work.steps.length));
  }),
  simulate: holds(
    fc.record({
      seed: fc.nat(),
      pupils: fc.constant(1),
      problems: fc.nat({ max: 1 }),
      slip: fc.double({ min: 0, max: 0.5, noNaN: true }),
      stage: stages,
      set: fc.constantFrom('designed', 'random'),
    }),
    (simulation) => {
      const simulated = engine.simulate(simulation);
      expectNamed(simulated);
      expect(simulated.ok).toBe(false);
    },
    20,
  ),
  standingsOf: holds(occasions, (met) => {
    for (const { probability } of engine.standingsOf(met))
      if (probability !== null) expect(probability >= 0 && probability <= 1).toBe(true);
  }),
  startWork: holds(problems, (problem) => expect(engine.startWork(problem).log).toEqual([])),
  toPoints: holds(fc.tuple(fractions, numbers), ([share, maximum]) => {
    const points = engine.toPoints(share, maximum);
    if (points.ok) expect(points.value).toMatch(/^\d+\.\d\d$/);
    else expect(points.fault).toEqual({ code: 'notANumber', at: 'maximum' });
  }),
  traceKnowledge: holds(
    fc.tuple(
      fc.array(fc.boolean()),
      fc.record({ prior: fc.double(), learn: fc.double(), guess: fc.double(), slip: fc.double() }),
    ),
    ([answers, parameters]) => {
      const traced = engine.traceKnowledge(answers, parameters);
      expectNamed(traced);
      if (traced.ok) expect(traced.value.knownBefore).toHaveLength(answers.length);
    },
  ),
  worked: holds(
    problems,
    (problem) => {
      const actions = engine.worked(problem).map(({ action }) => action);
      const { fraction } = engine.score([engine.replay(problem, actions)]);
      expect(fraction.num).toBe(fraction.den);
    },
    25,
  ),
  writeProblem: holds(problems, (problem) =>
    expect(engine.parseProblem(engine.writeProblem(problem))).toEqual({ ok: true, value: problem }),
  ),
};

/** Answers with a promise. */
const LATER = ['loadStage'];

const functionsOf = (door: object): string[] =>
  Object.entries(door).flatMap(([name, value]) => (typeof value === 'function' ? [name] : []));

describe('the doors of the engine', () => {
  it('are all told of here', () => {
    const told = [...Object.keys(OUTSIDE), ...Object.keys(INSIDE), ...LATER].sort();
    expect(told).toEqual(functionsOf(engine).sort());
    for (const name of functionsOf(child)) expect(told).toContain(name);
  });

  it.each(Object.entries(OUTSIDE))('%s takes anything and names what is wrong', (_, parse) => {
    fc.assert(
      fc.property(junk, (value) => expectNamed(parse(value))),
      { numRuns: 400 },
    );
  });

  it.each(Object.entries(INSIDE))('%s does with what was parsed', (_, hold) => hold());

  it('loadStage makes any stage playable', async () => {
    for (const stage of engine.STAGES)
      await expect(engine.loadStage(stage)).resolves.toBe(undefined);
  });
});
