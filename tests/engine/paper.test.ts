import { describe, expect, it } from 'vitest';
import { type Action, act, hint, nextMove, type Problem, startWork } from '../../engine/index.ts';
import { type Chance, chanceOf } from '../oracle/chance.ts';
import { actionsOf, isFull, play, problemOf, spent, statusOf } from './play.ts';
import { randomNumber } from './random.ts';

const PAPER = { stage: 'paper', multiplicand: '347', multiplier: '26' };
const begin = (line: number, row: number) => ({ do: 'begin', line: `partial:${line}`, row });
const on = (line: string, ...digits: (number | null)[]) =>
  digits.flatMap((digit, place) => (digit === null ? [] : [{ do: 'write', line, place, digit }]));
const FIRST = [begin(0, 0), ...on('partial:0', 2, 8, 0, 2)];
const SECOND = [begin(1, 1), ...on('partial:1', 0, 4, 9, 6)];
const SUM = on('product', 2, 2, 0, 9);
const END = { do: 'finish', what: 'problem' };
const paper = (...told: object[]) => play(PAPER, told);

describe('the written algorithm', () => {
  it('lets carries stand written or not, placeholders too, and rows in either order', () => {
    const carried = [...on('carry:0', null, 4, 2), ...on('carry:1', null, null, 1)];
    const upside = [begin(0, 1), ...on('partial:0', null, 4, 9, 6), begin(1, 0)];
    const ways = [
      [...FIRST, ...SECOND, ...SUM],
      [...carried, ...FIRST, ...SECOND, ...on('carry:product', null, null, 1, 1), ...SUM],
      [...upside, ...on('partial:1', 2, 8, 0, 2, 0), ...SUM],
    ];
    for (const way of ways) expect(isFull(paper(...way, END))).toBe(true);
  });

  it('loses one placeholder where it is forgotten, whatever is added from there', () => {
    const work = paper(
      ...FIRST,
      begin(1, 1),
      ...on('partial:1', 4, 9, 6),
      ...on('product', 6, 7, 7, 2),
      END,
    );
    expect(spent(work)).toEqual(['zero:1:0']);
  });

  it('loses one placeholder where there is one too many', () => {
    const second = [begin(1, 1), ...on('partial:1', 0, 0, 4, 9, 6)];
    const work = paper(...FIRST, ...second, ...on('product', 2, 8, 4, 1, 7), END);
    expect(spent(work)).toEqual(['zero:1:0']);
  });

  it('pays a misremembered fact once, the carry written or in the head', () => {
    // 6 × 7 taken for 56: 6, and 5 to carry.
    const first = on('partial:0', 6, 9, 0, 2);
    for (const carry of [[], on('carry:0', null, 5)]) {
      const told = [begin(0, 0), first[0]!, ...carry, ...first.slice(1)];
      const work = paper(...told, ...SECOND, ...on('product', 6, 3, 0, 9), END);
      expect(spent(work)).toEqual(['row:0:0']);
      expect(statusOf(work, 'row:0:1')).toBe('follows');
      expect(statusOf(work, 'sum:1')).toBe('follows');
    }
  });

  it('lets a wrong carry fall on the digit that it feeds', () => {
    const told = [begin(0, 0), ...on('partial:0', 2), ...on('carry:0', null, 3)];
    const work = paper(...told, ...on('partial:0', 2, 7, 0, 2), ...SECOND);
    expect(work.judgements.find(({ verdict }) => verdict === 'wrong')).toMatchObject({
      step: 'row:0:1',
      given: 3,
      due: 4,
    });
    expect(
      spent(paper(...told, ...on('partial:0', 2, 7, 0, 2), { do: 'finish', what: 'row:0' })).filter(
        (id) => id.startsWith('row:0'),
      ),
    ).toEqual(['row:0:1']);
  });

  it('leaves zero rows out, or zeros, or one zero', () => {
    const rows = [begin(0, 0), ...on('partial:0', 2, 4, 2), begin(1, 2)];
    for (const zeros of [
      [],
      [begin(2, 1), ...on('partial:2', 0)],
      [begin(2, 1), ...on('partial:2', 0, 0, 0, 0)],
    ]) {
      const told = [
        ...rows,
        ...on('partial:1', 0, 0, 3, 6, 3),
        ...zeros,
        ...on('product', 2, 4, 5, 6, 3),
      ];
      const work = play({ stage: 'paper', multiplicand: '121', multiplier: '302' }, [...told, END]);
      expect(isFull(work) && work.complete).toBe(true);
    }
  });

  it('takes the only row for the product, on either line', () => {
    for (const line of ['product', 'partial:0']) {
      const work = play({ stage: 'paper', multiplicand: '38', multiplier: '7' }, [
        ...on(line, 6, 6, 2),
        END,
      ]);
      expect(work.steps.map(({ id }) => id)).toEqual(['row:0:0', 'row:0:1', 'row:0:2']);
      expect(isFull(work)).toBe(true);
    }
    const both = [...on('partial:0', 6, 6, 2), ...on('product', 6, 6, 3), END];
    const work = play({ stage: 'paper', multiplicand: '38', multiplier: '7' }, both);
    expect(spent(work)).toEqual(['row:0:2']);
  });

  it('lets a zero at the end of the decimals be left out, and the point with it', () => {
    const decimals = { stage: 'paper', multiplicand: '2.5', multiplier: '1.4' };
    const line = (name: string, ...digits: [number, number][]) =>
      digits.map(([place, digit]) => ({ do: 'write', line: name, place, digit }));
    const rows = [
      begin(0, 0),
      ...line('partial:0', [-2, 0], [-1, 0], [0, 1]),
      begin(1, 1),
      ...line('partial:1', [-1, 5], [0, 2]),
    ];
    const point = (places: number) => ({ do: 'point', on: 'product', places });
    const short = line('product', [-1, 5], [0, 3]);
    for (const [product, places] of [
      [[...line('product', [-2, 0]), ...short], 2],
      [short, 2],
      [short, 1],
      // Closed up: the digits stand where the child wrote them, the point says what they are worth.
      [line('product', [-2, 5], [-1, 3]), 1],
    ] as const) {
      expect(spent(play(decimals, [...rows, ...product, point(places), END]))).toEqual([]);
    }
    const wrong = play(decimals, [...rows, ...line('product', [-2, 5], [-1, 3]), point(2), END]);
    expect(spent(wrong)).toEqual(['point']);
  });

  it('counts what is mended after an answer as corrected, before it as first', () => {
    const wrong = { do: 'write', line: 'partial:0', place: 1, digit: 7 };
    const right = { ...wrong, digit: 8 };
    const start = [begin(0, 0), ...on('partial:0', 2), wrong];
    expect(statusOf(paper(...start, right), 'row:0:1')).toBe('first');
    expect(statusOf(paper(...start, { do: 'check' }, { do: 'undo' }, right), 'row:0:1')).toBe(
      'corrected',
    );
    expect(paper(...start, { do: 'check' }).lifted).toEqual([
      { step: 'row:0:1', line: { line: 'partial:0', place: 1 } },
    ]);
    expect(
      statusOf(paper(...start, { do: 'hint', level: 2, step: 'row:0:1' }, right), 'row:0:1'),
    ).toBe('hinted');
  });

  it('asks at a row’s finish for what is missing there, and for nothing of other rows', () => {
    const work = paper(begin(0, 0), ...on('partial:0', 2, 8), { do: 'finish', what: 'row:0' });
    expect(work.lifted.map(({ step }) => step)).toEqual(['row:0:2', 'row:0:3']);
  });

  it('keeps what once was right, whatever is mended below it', () => {
    const told = [begin(0, 0), ...on('partial:0', 6, 9, 0, 2)];
    const work = paper(...told, ...on('partial:0', 2), ...SECOND, { do: 'finish', what: 'row:0' });
    expect(work.lifted).toEqual([]);
    expect(statusOf(work, 'row:0:1')).toBe('follows');
  });

  it('charges a row that is worked twice to the row that is left out, once', () => {
    const told = [
      ...FIRST,
      begin(1, 0),
      ...on('partial:1', 0, 2, 8, 0, 2),
      ...on('product', 2, 0, 9, 2, 2),
      END,
    ];
    expect(spent(paper(...told))).toEqual(['row:1:1']);
  });
});

describe('hints on paper', () => {
  it('name the places of the two digits, at all three levels', () => {
    const work = startWork(problemOf({ stage: 'paper', multiplicand: '3.4', multiplier: '0.6' }));
    const say = (level: 1 | 2 | 3) => hint(work, level, 'row:0:-2')!.say;
    expect(say(1)).toEqual({ key: 'ask.partial', values: {} });
    expect(say(2)).toMatchObject({ key: 'where.partial', values: { place: -2, places: [-1, -1] } });
    expect(say(3)).toMatchObject({ key: 'how.partial', values: { due: 4 } });
    expect(hint(work, 2, 'point')!.say.values).toMatchObject({ places: [-1, -1], place: -2 });
  });
});

/** Anything a page could send, right or wrong, on or off the paper. */
function anyAction(chance: Chance, { mat, multiplicand, multiplier }: Problem): Action {
  const place = mat.origin - 1 + chance.below(mat.columns + 2);
  const square = [chance.below(mat.rows + 1), chance.below(mat.columns + 1)];
  const digit = chance.below(10);
  const line = chance.pick([
    `partial:${chance.below(4)}`,
    `carry:${chance.below(4)}`,
    'product',
    'carry:product',
  ]);
  const slot = chance.pick(['own', 'fromRight']);
  const of = chance.maybe(0.3) ? { of: [chance.below(mat.rows), chance.below(mat.columns)] } : {};
  const told = chance.pick([
    { do: 'begin', line: `partial:${chance.below(4)}`, row: chance.below(4) },
    { do: 'write', line, place, digit },
    { do: 'write', line, place, digit },
    { do: 'write', line, place, digit },
    { do: 'rub', line, place },
    { do: 'write', square, slot, digit, ...of },
    { do: 'write', square, slot, digit, ...of },
    { do: 'rub', square, slot },
    {
      do: 'layTile',
      edge: 'bottom',
      index: chance.below(mat.columns),
      digit: multiplicand.digits[0],
    },
    { do: 'layTile', edge: 'right', index: chance.below(mat.rows), digit: multiplier.digits[0] },
    { do: 'layBars', square, kind: 1 + chance.below(9), count: 1 + chance.below(9) },
    { do: 'slide', from: square, to: [0, chance.below(mat.columns)] },
    {
      do: 'point',
      on: chance.pick(['product', 'multiplicand', 'partial:0']),
      places: chance.below(5),
    },
    { do: 'finish', what: chance.pick(['row:0', 'row:1', 'product']) },
    { do: 'check' },
    { do: 'hint', level: 2 },
    { do: 'undo' },
  ]);
  return actionsOf([told])[0]!;
}

describe.each(['record', 'cells', 'paper'] as const)('whatever is done at %s', (stage) => {
  it('is answered, and can be put right move by move', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const chance = chanceOf(seed + stage.length);
      const problem = problemOf({
        stage,
        multiplicand: randomNumber(chance, 1 + chance.below(3)),
        multiplier: randomNumber(chance, 1 + chance.below(3)),
        policy: { control: chance.pick(['checkpoint', 'eachStep']) },
      });
      let work = startWork(problem);
      for (let acts = 0; acts < 25; acts += 1) work = act(work, anyAction(chance, problem));
      const log = JSON.stringify(work.log);
      let moves = 0;
      for (; moves < 400 && !work.finished.problem; moves += 1) {
        work = act(work, nextMove(work)!.action);
      }
      expect(
        work.finished.problem,
        `${stage} ${seed} ${problem.multiplicand.text} × ${problem.multiplier.text} ${log}`,
      ).toBe(true);
      const unmet = work.steps.filter(({ status }) => status === 'open' || status === 'notRight');
      if (stage === 'record') continue;
      expect(
        unmet,
        `${stage} ${seed} ${problem.multiplicand.text} × ${problem.multiplier.text} ${log}`,
      ).toEqual([]);
    }
  });
});
