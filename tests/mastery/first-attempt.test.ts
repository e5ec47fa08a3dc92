import { describe, expect, it } from 'vitest';
import {
  type Action,
  type Problem,
  parseProblem,
  replay,
  startWork,
  worked,
} from '../../engine/index.ts';
import { type FirstAttempt, firstAttemptsOf } from '../../engine/mastery/index.ts';
import { STAGE_SKILLS } from '../../engine/mastery/stage-skills.ts';
import { STAGES } from '../../engine/vocabulary.ts';

function problemAt(stage: string, multiplicand = '47', multiplier = '36'): Problem {
  const parsed = parseProblem({ stage, multiplicand, multiplier });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

const numbersFor = (stage: string): [string, string] => ['476', stage === 'bars1' ? '8' : '68'];

function walk(): Problem {
  const parsed = parseProblem({ stage: 'walk', seed: 3, prompts: 6, categories: true });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.fault));
  return parsed.value;
}

const actionsOf = (problem: Problem): Action[] => worked(problem).map(({ action }) => action);

const shown = (
  problem: Problem,
  actions: readonly Action[],
  subject: string,
): FirstAttempt | undefined =>
  firstAttemptsOf(replay(problem, actions)).find((evidence) => evidence.subject === subject);

describe('what a problem shows', () => {
  const problem = problemAt('bars');

  it('is one right, unaided attempt a skill for the worked presentation', () => {
    const evidence = firstAttemptsOf(replay(problem, actionsOf(problem)));
    expect(evidence.map(({ subject }) => subject).sort()).toEqual([...STAGE_SKILLS.bars].sort());
    for (const { right, aided } of evidence) expect([right, aided]).toEqual([true, false]);
  });

  it('is nothing before anything was judged', () => {
    expect(firstAttemptsOf(startWork(problem))).toEqual([]);
  });

  it('is wrong when the first attempt was wrong, though it was mended at once', () => {
    const actions = actionsOf(problem);
    const first = actions.findIndex((action) => action.do === 'count');
    const count = actions[first] as Action & { do: 'count' };
    const slip: Action = { ...count, total: count.total + 1 };
    const mended = [
      ...actions.slice(0, first),
      slip,
      { do: 'undo' } as Action,
      ...actions.slice(first),
    ];
    expect(shown(problem, mended, 'counting')).toMatchObject({ right: false, aided: false });
    expect(shown(problem, mended, 'exchanging')).toMatchObject({ right: true });
  });

  it('is right when only a later attempt was wrong', () => {
    const actions = actionsOf(problem);
    const last = actions.findLastIndex((action) => action.do === 'count');
    const count = actions[last] as Action & { do: 'count' };
    const slip: Action = { ...count, total: count.total + 1 };
    const later = [
      ...actions.slice(0, last),
      slip,
      { do: 'undo' } as Action,
      ...actions.slice(last),
    ];
    expect(shown(problem, later, 'counting')).toMatchObject({ right: true });
  });

  it('is aided when a hint showed where or how before, not when it only asked', () => {
    const actions = actionsOf(problem);
    const counted = actions.findIndex((action) => action.do === 'count');
    const hinted = (level: 1 | 2 | 3, step?: string): Action[] => [
      ...actions.slice(0, counted),
      { do: 'hint', level, ...(step === undefined ? {} : { step }) },
      ...actions.slice(counted),
    ];
    expect(shown(problem, hinted(1, 'counted:0:0'), 'counting')).toMatchObject({ aided: false });
    expect(shown(problem, hinted(2, 'counted:0:0'), 'counting')).toMatchObject({ aided: true });
    expect(shown(problem, hinted(3, 'counted:0:0'), 'exchanging')).toMatchObject({ aided: false });
    expect(shown(problem, hinted(3), 'exchanging')).toMatchObject({ aided: true });
    // Building was over before the hint came.
    expect(shown(problem, hinted(3), 'building')).toMatchObject({ aided: false });
  });

  it.each(STAGES.filter((stage) => stage !== 'open'))(
    'asks at %s for the skills that its steps have',
    (stage) => {
      const steps = startWork(
        stage === 'walk' ? walk() : problemAt(stage, ...numbersFor(stage)),
      ).steps;
      const skills = new Set(steps.map(({ skill }) => skill));
      expect([...skills].sort()).toEqual([...STAGE_SKILLS[stage]].sort());
    },
  );

  it('asks for the point as well, wherever a number has one', () => {
    for (const stage of STAGES.filter((each) => !['walk', 'build', 'open'].includes(each))) {
      const steps = startWork(problemAt(stage, '4.76', stage === 'bars1' ? '8' : '68')).steps;
      const skills = new Set(steps.map(({ skill }) => skill));
      expect([...skills].sort()).toEqual([...STAGE_SKILLS[stage], 'point'].sort());
    }
  });

  it('is nothing on the open mat, where a child works as it likes', () => {
    expect(STAGE_SKILLS.open).toEqual([]);
  });
});
