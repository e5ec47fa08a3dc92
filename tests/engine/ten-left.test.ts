import { expect, it } from 'vitest';
import { play, spent } from './play.ts';

it('a pile of exactly ten that was never counted spends its count', () => {
  const work = play({ stage: 'bars1', multiplicand: '5', multiplier: '2' }, [
    { do: 'layTile', edge: 'bottom', index: 0, digit: 5 },
    { do: 'layTile', edge: 'right', index: 0, digit: 2 },
    { do: 'layBars', square: [0, 0], kind: 5, count: 2 },
    { do: 'say', row: 0, answer: '10' },
    { do: 'write', line: 'product', place: 0, digit: 0 },
    { do: 'write', line: 'product', place: 1, digit: 1 },
    { do: 'finish', what: 'problem' },
  ]);
  expect(spent(work)).toEqual(['counted:0:0']);
});
