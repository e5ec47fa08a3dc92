import { explain, makeProblems, parseSpecification, replay } from '../../engine/index.ts';
import { classWork, type PupilWork } from './class-work.ts';
import { type Bench, type Figure, median, secondsOf } from './figure.ts';

const PUPILS = 30;
const PROBLEMS = 20;
const SEED = 1;
const RUNS = 7;
/** Rounds before any is counted: the engine is measured as it runs in a server that has been up for a while. */
const WARM = 15;

/** By work, seconds a round; in turn, so that a machine that is slow for a while is slow for all of them. */
function mediansOf(works: readonly (() => unknown)[]): number[] {
  for (let round = 0; round < WARM; round += 1) for (const work of works) work();
  const runs = Array.from({ length: RUNS }, () => works.map(secondsOf));
  return works.map((_, index) => median(runs.map((run) => run[index]!)));
}

/**
 * One class's work is replayed and judged, against `JSON.parse` of the same actions: one pupil's works after another's,
 * as the server replays attempts.
 */
function replayFigure(): Figure {
  const works = classWork(PUPILS, PROBLEMS, SEED);
  const actions = works.reduce((sum, work) => sum + work.actions.length, 0);
  const pupils = pupilsOf(works);
  const texts = pupils.map((own) => own.map((work) => JSON.stringify(work.actions)));
  const parsing = () => {
    for (const own of texts) own.map((text) => JSON.parse(text));
  };
  const replaying = () => {
    for (const own of pupils) own.map((work) => replay(work.problem, work.actions));
  };
  const [parsed, replayed] = mediansOf([parsing, replaying]);
  const [floor, measured] = [actions / parsed!, actions / replayed!];
  const ratio = measured / floor;
  const budget = 0.25;
  const what = `replay and judging of ${PUPILS} pupils × ${PROBLEMS} problems, ${actions} actions`;
  return { what, unit: 'actions/s', measured, floor, ratio, budget, holds: ratio >= budget };
}

/** Milliseconds that somebody waits, without a floor; what a round needs is made before its time is taken. */
function durationFigure(
  what: string,
  budget: number,
  prepared: (round: number) => () => unknown,
): Figure {
  const runs = Array.from({ length: WARM + RUNS }, (_, round) => {
    const work = prepared(round);
    const begun = performance.now();
    work();
    return performance.now() - begun;
  });
  const measured = median(runs.slice(WARM));
  return { what, unit: 'ms', measured, floor: null, ratio: null, budget, holds: measured < budget };
}

function pupilsOf(works: readonly PupilWork[]): PupilWork[][] {
  return Array.from({ length: works.length / PROBLEMS }, (_, pupil) =>
    works.slice(pupil * PROBLEMS, (pupil + 1) * PROBLEMS),
  );
}

/** Another class at the same problems each round: what is remembered of a class before must not be what is measured. */
function explainFigure(): Figure {
  const everybody = pupilsOf(classWork(PUPILS * (WARM + RUNS), PROBLEMS, SEED));
  const what = `explain the ${PROBLEMS} works of each of ${PUPILS} pupils`;
  return durationFigure(what, 100, (round) => {
    const pupils = everybody
      .slice(round * PUPILS, (round + 1) * PUPILS)
      .map((own) => own.map(({ problem, actions }) => replay(problem, actions)));
    return () => pupils.map((own) => explain(own));
  });
}

const SAMPLED = 10_000;

function samplingFigure(): Figure {
  return durationFigure(`sample ${SAMPLED} problems`, 1_000, () => () => {
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
