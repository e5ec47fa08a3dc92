import { describe, expect, it } from 'vitest';
import {
  type Hand,
  type HandDeed,
  type HandEvent,
  startHand,
  stepHand,
} from '../../client/mat/hand.ts';

type Event = HandEvent<string>;

const down = (pointer = 1): Event => ({ is: 'down', source: 'bar', x: 10, y: 10, pointer });
const move = (x: number, y: number, pointer = 1): Event => ({ is: 'move', x, y, pointer });
const up = (x: number, y: number, pointer = 1): Event => ({ is: 'up', x, y, pointer });

const play = (events: readonly Event[]): { hand: Hand<string>; deeds: HandDeed<string>[] } => {
  let hand = startHand<string>();
  const deeds: HandDeed<string>[] = [];
  for (const event of events) {
    const [next, deed] = stepHand(hand, event);
    hand = next;
    if (deed !== null) deeds.push(deed);
  }
  return { hand, deeds };
};

describe('the hand', () => {
  it('takes a bar once the finger has moved, lets it follow, and drops it where the finger leaves', () => {
    const { hand, deeds } = play([down(), move(40, 10), move(60, 20), up(60, 20)]);
    expect(deeds.map((deed) => deed?.is)).toEqual(['take', 'follow', 'drop']);
    expect(deeds.at(-1)).toEqual({ is: 'drop', source: 'bar', x: 60, y: 20 });
    expect(hand.state).toBe('idle');
  });

  it('takes nothing while the finger only trembles: that is a tap', () => {
    expect(play([down(), move(13, 12), up(13, 12)]).deeds).toEqual([]);
  });

  it('lets go without dropping when it is cancelled', () => {
    const { hand, deeds } = play([down(), move(40, 10), { is: 'cancel' }]);
    expect(deeds.at(-1)).toEqual({ is: 'release' });
    expect(hand.state).toBe('idle');
  });

  it('is not disturbed by a second finger', () => {
    const { deeds } = play([
      down(),
      move(40, 10),
      down(2),
      move(90, 90, 2),
      up(90, 90, 2),
      up(41, 10),
    ]);
    expect(deeds.at(-1)).toEqual({ is: 'drop', source: 'bar', x: 41, y: 10 });
  });
});
