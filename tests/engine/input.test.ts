import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  act,
  hint,
  nextMove,
  parseAction,
  parseProblem,
  refusalOf,
  replay,
  STAGES,
  score,
  startWork,
  toPoints,
  worked,
} from '../../engine/index.ts';
import { problemOf } from './play.ts';

const junk = fc.anything({ maxDepth: 3, withBigInt: true, withNullPrototype: true });

/** Fields that a problem or an action has, with anything in them. */
function maybe(fields: readonly string[]): fc.Arbitrary<Record<string, unknown>> {
  const value = fc.oneof(
    junk,
    fc.constantFrom('934', '0', '1.5', 'product', 'row:0', 'bottom', [0, 0], 3),
  );
  return fc.dictionary(fc.constantFrom(...fields), value, { maxKeys: fields.length });
}

describe('a problem from outside', () => {
  const fields = ['multiplicand', 'multiplier', 'mat', 'policy', 'seed', 'prompts', 'categories'];

  it('becomes a problem or a fault that names its argument, never a throw', () => {
    const written = fc.oneof(
      junk,
      fc
        .tuple(fc.constantFrom(...STAGES), maybe(fields))
        .map(([stage, rest]) => ({ ...rest, stage })),
    );
    fc.assert(
      fc.property(written, (value) => {
        const parsed = parseProblem(value);
        if (parsed.ok) expect(worked(parsed.value).length).toBeGreaterThan(0);
        else
          expect([typeof parsed.fault.code, typeof parsed.fault.at]).toEqual(['string', 'string']);
      }),
      { numRuns: 600 },
    );
  });

  it.each([
    [{ stage: 'bars', multiplicand: '9x', multiplier: '3' }, 'multiplicand', 'notANumber'],
    [{ stage: 'bars', multiplicand: '9' }, 'multiplier', 'notText'],
    [{ stage: 'beads', multiplicand: '9', multiplier: '3' }, 'stage', 'unknownWord'],
    [{ stage: 'bars1', multiplicand: '9', multiplier: '31' }, 'multiplier', 'oneRowOnly'],
    [{ stage: 'walk', multiplicand: '9' }, 'multiplicand', 'notForThisStage'],
    [{ stage: 'bars', multiplicand: '9', multiplier: '3', seed: 1 }, 'seed', 'notForThisStage'],
    [{ stage: 'bars', multiplicand: '9', multiplier: '3', colour: 1 }, 'colour', 'unknownField'],
    [
      { stage: 'bars', multiplicand: '9', multiplier: '3', policy: { marks: { first: '2' } } },
      'policy.marks.first',
      'notAMark',
    ],
    [
      { stage: 'bars', multiplicand: '9', multiplier: '3', policy: { control: 'loud' } },
      'policy.control',
      'unknownWord',
    ],
    [{ stage: 'walk', prompts: 1e9 }, 'prompts', 'outOfRange'],
    [null, 'problem', 'notAnObject'],
  ])('%j: %s is named', (written, at, code) => {
    expect(parseProblem(written)).toMatchObject({ ok: false, fault: { at, code } });
  });
});

describe('an action from outside', () => {
  const names = [
    'layTile',
    'layBars',
    'count',
    'makeTen',
    'exchange',
    'slide',
    'begin',
    'write',
    'rub',
    'point',
    'say',
    'check',
    'hint',
    'finish',
    'undo',
  ];
  const fields = [
    'edge',
    'index',
    'digit',
    'square',
    'kind',
    'count',
    'of',
    'total',
    'bars',
    'split',
    'from',
    'to',
    'tens',
    'ones',
    'line',
    'row',
    'place',
    'slot',
    'on',
    'places',
    'answer',
    'prompt',
    'level',
    'step',
    'what',
  ];
  const told = fc.oneof(
    junk,
    fc
      .tuple(fc.constantFrom(...names), maybe(fields))
      .map(([name, rest]) => ({ ...rest, do: name })),
  );

  it('becomes an action that any work can take, or a fault that names its argument', () => {
    const works = STAGES.map((stage) =>
      startWork(
        problemOf(
          stage === 'walk'
            ? { stage }
            : { stage, multiplicand: '93', multiplier: stage === 'bars1' ? '4' : '14' },
        ),
      ),
    );
    fc.assert(
      fc.property(told, (value) => {
        const parsed = parseAction(value);
        expect(parsed.ok || typeof parsed.fault.at).toBe(parsed.ok ? true : 'string');
        if (!parsed.ok) return;
        for (const work of works) {
          expect(act(work, parsed.value).log.at(-1)?.refused).toBe(
            refusalOf(work, parsed.value) ?? undefined,
          );
        }
      }),
      { numRuns: 1_500 },
    );
  });

  it.each([
    [{ do: 'layBars', square: [0, 0], kind: 10, count: 1 }, 'kind'],
    [{ do: 'layBars', square: [0, -1], kind: 1, count: 1 }, 'square[1]'],
    [{ do: 'layBars', square: [0, 0], kind: 1, count: 1.5 }, 'count'],
    [{ do: 'count', square: [0, 0], total: -1 }, 'total'],
    [{ do: 'makeTen', square: [0, 0], bars: [6, 4], split: { kind: 4, take: 4 } }, 'split.take'],
    [{ do: 'exchange', from: [0, 0], tens: 0, to: [0, 1], ones: 0 }, 'tens'],
    [{ do: 'write', line: 'product', place: 0, digit: 10 }, 'digit'],
    [{ do: 'write', line: 'partial:9', place: 0, digit: 1 }, 'line'],
    [{ do: 'finish', what: 'row:7' }, 'what'],
    [{ do: 'dance' }, 'do'],
    [{ do: 'check', loudly: true }, 'loudly'],
  ])('%j: %s is named', (told, at) => {
    expect(parseAction(told, 'actions[3]')).toMatchObject({
      ok: false,
      fault: { at: `actions[3].${at}` },
    });
  });
});

describe('any function of the door', () => {
  it('answers for a work of any stage, at its beginning and its end', () => {
    for (const stage of STAGES) {
      const numbers =
        stage === 'walk'
          ? {}
          : { multiplicand: '90.5', multiplier: stage === 'bars1' ? '4' : '104' };
      const problem = problemOf({ stage, ...numbers });
      const actions = worked(problem).map(({ action }) => action);
      for (const work of [startWork(problem), replay(problem, actions)]) {
        for (const level of [1, 2, 3] as const) {
          const found = hint(work, level);
          if (found !== null) expect(work.steps.map(({ id }) => id)).toContain(found.step);
          expect(() => hint(work, level, 'no such step')).not.toThrow();
        }
        nextMove(work);
        expect(score([work]).available.num).toBeGreaterThan(0n);
      }
    }
  });

  it('stays quick under very many actions and undos', () => {
    const lay = { do: 'layBars', square: [0, 0], kind: 9, count: 99 } as const;
    const many = Array.from({ length: 10_000 }, (_, index) =>
      index % 3 === 2 ? ({ do: 'undo' } as const) : lay,
    );
    const work = replay(problemOf({ multiplicand: '934', multiplier: '314' }), many);
    expect(work.log).toHaveLength(10_000);
  });

  it('gives no points for a maximum that is no number', () => {
    const fault = { ok: false, fault: { code: 'notANumber', at: 'maximum' } };
    expect(toPoints({ num: 1n, den: 2n }, 'many')).toEqual(fault);
    expect(toPoints({ num: 1n, den: 2n }, Number.NaN)).toEqual(fault);
  });
});
