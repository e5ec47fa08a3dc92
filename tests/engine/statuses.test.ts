import { describe, expect, it } from 'vitest';
import {
  act,
  fractionText,
  nextMove,
  replay,
  score,
  scoreBySkill,
  type Work,
} from '../../engine/index.ts';
import { actionsOf, play, problemOf, spent, statusOf } from './play.ts';

const SMALL = { multiplicand: '7', multiplier: '6' };
const TILES = [
  { do: 'layTile', edge: 'bottom', index: 0, digit: 7 },
  { do: 'layTile', edge: 'right', index: 0, digit: 6 },
];
const LAY = { do: 'layBars', square: [0, 0], kind: 7, count: 6 };
const CHECK = { do: 'check' };

/** Goes on with the next sensible moves until the problem is finished. */
function finished(work: Work): Work {
  let going = work;
  for (let moves = 0; moves < 200 && !going.finished.problem; moves += 1) {
    going = act(going, nextMove(going)!.action);
  }
  return going;
}

describe('a step', () => {
  it('counts in the whole though nothing was done for it yet', () => {
    const begun = play(SMALL, TILES);
    expect(statusOf(begun, 'laid:0:0')).toBe('open');
    expect(score([begun])).toMatchObject({
      awarded: { num: 2n, den: 1n },
      available: { num: BigInt(begun.steps.length), den: 1n },
    });
  });

  it('changed before the mat has answered is first', () => {
    const work = play(SMALL, [...TILES, { ...LAY, kind: 6 }, { do: 'undo' }, LAY]);
    expect(statusOf(work, 'laid:0:0')).toBe('first');
  });

  it('that was wrong at an answer and mended is corrected', () => {
    const work = play(SMALL, [...TILES, { ...LAY, count: 7 }, CHECK, { do: 'undo' }, LAY]);
    expect(statusOf(work, 'laid:0:0')).toBe('corrected');
  });

  it('that was missing at the finish of its row and laid later is corrected; a check asks for nothing missing', () => {
    const rest = (asked: object) => play(SMALL, [...TILES, asked, LAY]);
    expect(statusOf(rest({ do: 'finish', what: 'row:0' }), 'laid:0:0')).toBe('corrected');
    expect(statusOf(rest(CHECK), 'laid:0:0')).toBe('first');
  });

  it('that a hint of level 2 or 3 named before it was met is hinted; level 1 never counts', () => {
    const rest = (level: number) =>
      play(SMALL, [...TILES, { do: 'hint', level, step: 'laid:0:0' }, LAY]);
    expect(statusOf(rest(1), 'laid:0:0')).toBe('first');
    expect(statusOf(rest(2), 'laid:0:0')).toBe('hinted');
    expect(statusOf(rest(3), 'laid:0:0')).toBe('hinted');
  });

  it('hinted and wrong is hinted: the worst counts', () => {
    const work = play(SMALL, [
      ...TILES,
      { ...LAY, count: 7 },
      CHECK,
      { do: 'hint', level: 2, step: 'laid:0:0' },
      { do: 'undo' },
      LAY,
    ]);
    expect(statusOf(work, 'laid:0:0')).toBe('hinted');
  });

  it('a hint without a step names the first unmet one of the list', () => {
    const work = play(SMALL, [TILES[1]!, { do: 'hint', level: 2 }, TILES[0]!]);
    expect(statusOf(work, 'tile:bottom:0')).toBe('hinted');
    expect(statusOf(work, 'tile:right:0')).toBe('first');
  });

  it('right for the own tile where that differs from the true one follows', () => {
    const work = play(SMALL, [{ ...TILES[0]!, digit: 8 }, TILES[1]!, { ...LAY, kind: 8 }]);
    expect(statusOf(work, 'laid:0:0')).toBe('follows');
    expect(statusOf(work, 'tile:bottom:0')).toBe('notRight');
  });

  it('never tried is open until the problem is finished, then not right', () => {
    expect(statusOf(play(SMALL, TILES), 'read:0')).toBe('open');
    expect(
      statusOf(play(SMALL, [...TILES, LAY, { do: 'finish', what: 'problem' }]), 'read:0'),
    ).toBe('notRight');
  });

  it('stays right for the tile of its time, but the work is not complete until it is laid anew', () => {
    const wrong = [{ ...TILES[0]!, digit: 8 }, TILES[1]!, { ...LAY, kind: 8 }];
    const mended = play(SMALL, [...wrong, { do: 'finish', what: 'row:0' }, TILES[0]!]);
    expect(statusOf(mended, 'laid:0:0')).toBe('follows');
    expect(statusOf(mended, 'tile:bottom:0')).toBe('corrected');
    const end = act(mended, { do: 'finish', what: 'problem' });
    expect(end.complete).toBe(false);
  });

  it('zero pairs are met by an empty square once their row is finished', () => {
    const zero = { multiplicand: '70', multiplier: '6' };
    const tiles = [
      { do: 'layTile', edge: 'bottom', index: 0, digit: 0 },
      { do: 'layTile', edge: 'bottom', index: 1, digit: 7 },
      TILES[1]!,
    ];
    const lay = { ...LAY, square: [0, 1] };
    expect(statusOf(play(zero, [...tiles, lay]), 'laid:0:0')).toBe('open');
    const end = play(zero, [...tiles, lay, { do: 'finish', what: 'row:0' }]);
    expect(statusOf(end, 'laid:0:0')).toBe('first');
  });
});

describe('a debt', () => {
  const counted = (total: number) => ({ do: 'count', square: [0, 0], total });

  it.each([
    ['undo', [{ do: 'undo' }, counted(42)]],
    ['counting the same pile again', [counted(42)]],
    [
      'lifting and laying',
      [
        { do: 'liftBars', square: [0, 0], kind: 3, count: 1 },
        { do: 'layBars', square: [0, 0], kind: 2, count: 1 },
      ],
    ],
  ])('of a wrong count is paid by %s, and mends that step alone', (_, mend) => {
    const work = finished(play(SMALL, [...TILES, LAY, counted(43), CHECK, ...mend]));
    expect(spent(work)).toEqual(['counted:0:0']);
    expect(statusOf(work, 'counted:0:0')).toBe('corrected');
  });

  it.each([
    ['more ones', [{ do: 'layBars', square: [0, 1], kind: 1, count: 1 }]],
    ['a later half', [{ do: 'exchange', from: [0, 0], tens: 0, to: [0, 1], ones: 1 }]],
    ['undo', [{ do: 'undo' }]],
  ])('of a wrong exchange is paid by %s', (_, mend) => {
    const short = { do: 'exchange', from: [0, 0], tens: 4, to: [0, 1], ones: 3 };
    const work = finished(play(SMALL, [...TILES, LAY, counted(42), short, CHECK, ...mend]));
    expect(spent(work)).toEqual(['settled:0']);
    expect(statusOf(work, 'settled:0')).toBe('corrected');
  });

  it('of a slide off the diagonal is paid by sliding back', () => {
    const two = { multiplicand: '3', multiplier: '21' };
    const tiles = [
      { do: 'layTile', edge: 'bottom', index: 0, digit: 3 },
      { do: 'layTile', edge: 'right', index: 0, digit: 1 },
      { do: 'layTile', edge: 'right', index: 1, digit: 2 },
    ];
    const work = play(two, [
      ...tiles,
      { do: 'layBars', square: [0, 0], kind: 3, count: 1 },
      { do: 'layBars', square: [1, 0], kind: 3, count: 2 },
      { do: 'slide', from: [1, 0], to: [0, 2] },
      CHECK,
      { do: 'slide', from: [0, 2], to: [0, 1] },
    ]);
    expect(statusOf(finished(work), 'slid:1')).toBe('corrected');
  });

  it('two halves make one exchange, in either order, and are neutral until both are there', () => {
    const take = { do: 'exchange', from: [0, 0], tens: 4, to: [0, 1], ones: 0 };
    const give = { do: 'exchange', from: [0, 0], tens: 0, to: [0, 1], ones: 4 };
    for (const halves of [
      [take, CHECK, give],
      [give, CHECK, take],
    ]) {
      expect(spent(finished(play(SMALL, [...TILES, LAY, counted(42), ...halves])))).toEqual([]);
    }
    const half = play(SMALL, [
      ...TILES,
      LAY,
      counted(42),
      take,
      { do: 'finish', what: 'row:0' },
      give,
    ]);
    expect(statusOf(finished(half), 'settled:0')).toBe('corrected');
  });
});

describe('what the mat answers', () => {
  const wrong = [...TILES, { ...LAY, count: 7 }];
  const lifted = (control: string, told: readonly object[]) =>
    play({ ...SMALL, policy: { control } }, told).lifted.map(({ step }) => step);

  it('comes at each step, at a checkpoint, at the end, or never', () => {
    const finish = { do: 'finish', what: 'problem' };
    expect(lifted('eachStep', wrong)).toEqual(['laid:0:0']);
    expect(lifted('checkpoint', wrong)).toEqual([]);
    expect(lifted('checkpoint', [...wrong, CHECK])).toEqual(['laid:0:0']);
    expect(lifted('end', [...wrong, CHECK])).toEqual([]);
    expect(lifted('end', [...wrong, finish])).toContain('laid:0:0');
    expect(lifted('silent', [...wrong, CHECK, finish])).toEqual([]);
  });

  it('is gone once it is mended', () => {
    expect(lifted('checkpoint', [...wrong, CHECK, { do: 'undo' }, LAY])).toEqual([]);
  });

  it("says of bars by turns that the other number's bar is of the wrong kind", () => {
    const turns = { ...SMALL, policy: { laying: 'turns' } };
    const swapped = { ...LAY, kind: 6, count: 7 };
    expect(play(turns, [...TILES, swapped]).judgements.at(-1)).toMatchObject({
      verdict: 'wrong',
      skill: 'kind',
    });
    expect(play(SMALL, [...TILES, swapped]).judgements.at(-1)).toMatchObject({ verdict: 'right' });
  });
});

describe('the score', () => {
  it('is exact, over all problems, by the values of the policy', () => {
    const policy = { marks: { corrected: '1/3' } };
    const told = [...TILES, { ...LAY, count: 7 }, CHECK, { do: 'undo' }, LAY];
    const work = finished(play({ ...SMALL, policy }, told));
    const { awarded, available, fraction } = score([work, work]);
    const steps = 2 * work.steps.length;
    expect(fractionText(available)).toBe(`${steps}`);
    expect(fractionText(awarded)).toBe(`${3 * (steps - 2) + 2}/3`);
    expect(fraction.num * available.num * awarded.den).toBe(awarded.num * fraction.den);
    expect(fractionText(scoreBySkill([work]).laying!.fraction)).toBe('1/3');
  });

  it('of nothing is nothing', () => {
    expect(fractionText(score([]).fraction)).toBe('0');
  });

  it('gives a reason with every mark', () => {
    for (const { reason } of replay(problemOf(SMALL), actionsOf(TILES)).steps) {
      expect(reason.key).toMatch(/^mark\.(first|open)$/);
      expect(reason.values['skill']).toBeTypeOf('string');
    }
  });
});
