/**
 * The hand that drags: a pure machine of three states with a way out of each.
 * idle → pointing (pressed, not yet moved) → dragging (moved far enough) → idle.
 * `S` is what can be taken, e.g. a bar of the tray or a pile of the mat.
 */
export type Hand<S> =
  | { readonly state: 'idle' }
  | {
      readonly state: 'pointing';
      readonly source: S;
      readonly x: number;
      readonly y: number;
      readonly pointer: number;
    }
  | {
      readonly state: 'dragging';
      readonly source: S;
      readonly x: number;
      readonly y: number;
      readonly pointer: number;
    };

export type HandEvent<S> =
  | {
      readonly is: 'down';
      readonly source: S;
      readonly x: number;
      readonly y: number;
      readonly pointer: number;
    }
  | { readonly is: 'move' | 'up'; readonly x: number; readonly y: number; readonly pointer: number }
  | { readonly is: 'cancel' };

/** What the page has to do after a step: `take` shows the thing under the pointer, `drop` lays it down at (x, y). */
export type HandDeed<S> =
  | { readonly is: 'take' | 'drop'; readonly source: S; readonly x: number; readonly y: number }
  | { readonly is: 'follow'; readonly x: number; readonly y: number }
  | { readonly is: 'release' }
  | null;

/** Movement below this many pixels is a tap: a child's finger trembles. */
const SLACK = 7;
const IDLE = { state: 'idle' } as const;

export const startHand = <S>(): Hand<S> => IDLE;

const moved = <S>(hand: Hand<S>, event: { x: number; y: number }): [Hand<S>, HandDeed<S>] => {
  if (hand.state === 'dragging')
    return [
      { ...hand, x: event.x, y: event.y },
      { is: 'follow', x: event.x, y: event.y },
    ];
  if (hand.state === 'idle' || Math.hypot(event.x - hand.x, event.y - hand.y) < SLACK)
    return [hand, null];
  return [
    { ...hand, state: 'dragging', x: event.x, y: event.y },
    { is: 'take', source: hand.source, x: event.x, y: event.y },
  ];
};

/** One step of the hand. A second pointer never disturbs the first. */
export const stepHand = <S>(hand: Hand<S>, event: HandEvent<S>): [Hand<S>, HandDeed<S>] => {
  if (event.is === 'cancel') return [IDLE, hand.state === 'dragging' ? { is: 'release' } : null];
  if (event.is === 'down')
    return hand.state === 'idle'
      ? [
          {
            state: 'pointing',
            source: event.source,
            x: event.x,
            y: event.y,
            pointer: event.pointer,
          },
          null,
        ]
      : [hand, null];
  if (hand.state === 'idle' || hand.pointer !== event.pointer) return [hand, null];
  if (event.is === 'move') return moved(hand, event);
  return hand.state === 'dragging'
    ? [IDLE, { is: 'drop', source: hand.source, x: event.x, y: event.y }]
    : [IDLE, null];
};
