import { explain, makeProblems, parseSpecification, replay } from '../../engine/index.ts';
import { classWork } from './class-work.ts';
import { type Bench, type Figure, median, secondsOf } from './figure.ts';

const PUPILS = 30;
const PROBLEMS = 20;
const SEED = 1;
const RUNS = 7;
/** Rounds before any is counted: the engine is measured as it runs in a server that has been up for a while. */
const WARM = 3;
/** The judge and `JSON.parse` beside it are run through more often, for many paths of theirs are rarely taken. */
const WARM_REPLAY = 15;

/** By work, seconds a round; in turn, so that a machine that is slow for a while is slow for all of them. */
function mediansOf(works: readonly ((round: number) => unknown)[], warm: number): number[] {
  for (let round = 0; round < warm; round += 1) for (const work of works) work(round);
  const runs = Array.from({ length: RUNS }, (_, run) =>
    works.map((work) => secondsOf(() => work(warm + run))),
  );
  return works.map((_, index) => median(runs.map((run) => run[index]!)));
}

/** One class's work is replayed and judged, against `JSON.parse` of the same actions. */
function replayFigure(): Figure {
  const works = classWork(PUPILS, PROBLEMS, SEED);
  const texts = works.map(({ actions }) => JSON.stringify(actions));
  const actions = works.reduce((sum, work) => sum + work.actions.length, 0);
  const parsing = () => texts.map((text) => JSON.parse(text));
  const replaying = () => works.map((work) => replay(work.problem, work.actions));
  const [parsed, replayed] = mediansOf([parsing, replaying], WARM_REPLAY);
  const [floor, measured] = [actions / parsed!, actions / replayed!];
  const ratio = measured / floor;
  const budget = 0.25;
  const what = `replay and judging of ${PUPILS} pupils × ${PROBLEMS} problems, ${actions} actions`;
  return { what, unit: 'actions/s', measured, floor, ratio, budget, holds: ratio >= budget };
}

/** Milliseconds, without a floor. */
function durationFigure(what: string, budget: number, work: (round: number) => unknown): Figure {
  const measured = 1000 * mediansOf([work], WARM)[0]!;
  return { what, unit: 'ms', measured, floor: null, ratio: null, budget, holds: measured < budget };
}

/** Another class at the same problems each round: what is remembered of a class before must not be what is measured. */
function explainFigure(): Figure {
  const everybody = PUPILS * (WARM + RUNS);
  const works = classWork(everybody, PROBLEMS, SEED).map(({ problem, actions }) =>
    replay(problem, actions),
  );
  const pupils = Array.from({ length: everybody }, (_, pupil) =>
    works.slice(pupil * PROBLEMS, (pupil + 1) * PROBLEMS),
  );
  const classAt = (round: number) => pupils.slice(round * PUPILS, (round + 1) * PUPILS);
  return durationFigure(`explain the ${PROBLEMS} works of each of ${PUPILS} pupils`, 100, (round) =>
    classAt(round).map((own) => explain(own)),
  );
}

const SAMPLED = 10_000;

function samplingFigure(): Figure {
  return durationFigure(`sample ${SAMPLED} problems`, 1_000, () => {
    const parsed = parseSpecification({
      stage: 'bars',
      multiplicand: { digits: 4 },
      multiplier: { digits: 3 },
      facts: { required: [[7, 8]] },
      count: SAMPLED,
      seed: SEED,
    });
    const made = parsed.ok ? makeProblems(parsed.value) : parsed;
    if (!made.ok) throw new Error(JSON.stringify(made.fault));
  });
}

/** The engine by itself: replay and judging, explaining, making problems. */
export const engine: Bench = async () => {
  const first = replayFigure();
  const { ratio, measured: perSecond, floor: floorPerSecond } = first;
  const figures = [first, explainFigure(), samplingFigure()];
  return { ratio, perSecond, floorPerSecond, p50Ms: null, p99Ms: null, runs: RUNS, figures };
};
