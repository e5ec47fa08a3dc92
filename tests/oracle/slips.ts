import type { Square, Told } from './beads.ts';
import type { Chance } from './chance.ts';
import { key, type Slip, type Worker } from './worker.ts';

/** Whether these bars are all that the pair is due. */
function isWhole(told: Told, worker: Worker): boolean {
  // A digit of a fact is laid once, wherever it lands.
  if (told['of'] !== undefined) return true;
  const [row, column] = told['square'] as Square;
  const due = worker.tiles.bottom.get(column)! * worker.tiles.right.get(row)!;
  return (told['kind'] as number) * (told['count'] as number) === due;
}

/** What a slip makes of one action: other actions in its place, or null where it cannot happen here. */
type Change = (told: Told, worker: Worker, chance: Chance) => Told[] | null;

/** Every kind of wrong action with bars, tiles, sayings and the product line. */
export const SLIPS: Readonly<Record<string, Change>> = {
  'wrong tile': (told, _worker, chance) =>
    told.do === 'layTile'
      ? [{ ...told, digit: other(told['digit'] as number, 0, 9, chance) }]
      : null,
  'missing tile': (told) => (told.do === 'layTile' ? [] : null),
  'extra tile': (told, { given }, chance) => {
    if (told.do !== 'layTile') return null;
    const [edge, index, most] = chance.maybe(0.5)
      ? ['bottom', given.across.length, given.columns]
      : ['right', given.up.length, given.rows];
    return (index as number) < (most as number)
      ? [told, { do: 'layTile', edge, index, digit: chance.below(10) }]
      : null;
  },
  'wrong kind of bar': (told, _worker, chance) =>
    told.do === 'layBars' ? [{ ...told, kind: other(told['kind'] as number, 1, 9, chance) }] : null,
  'wrong count of bars': (told, _worker, chance) =>
    told.do === 'layBars'
      ? [{ ...told, count: other(told['count'] as number, 1, 12, chance) }]
      : null,
  'bars on a wrong square': (told, worker, chance) => {
    if (told.do !== 'layBars') return null;
    const { given } = worker;
    const [row, column] = told['square'] as Square;
    const square = chance.maybe(0.5)
      ? [row, other(column, 0, given.columns - 1, chance)]
      : [other(row, 0, given.rows - 1, chance), column];
    if (square[0] === row && square[1] === column) return null;
    // One bar of several: the pair still lacks it, and the child goes by what lies there.
    const whole = isWhole(told, worker);
    return whole ? [{ ...told, square }] : [{ ...told, square }, told];
  },
  'missing square': (told, worker) => (told.do === 'layBars' && isWhole(told, worker) ? [] : null),
  'bars laid twice': (told) => (told.do === 'layBars' ? [told, { ...told }] : null),
  'wrong count': (told, _worker, chance) =>
    told.do === 'count'
      ? [
          {
            ...told,
            total: other(told['total'] as number, 1, (told['total'] as number) + 12, chance),
          },
        ]
      : null,
  'missing count': (told, worker) => {
    const square = told['square'] as Square;
    if (told.do !== 'count' || square[0] !== 0 || worker.beads.value(square) < 10) return null;
    if (square[1] + 1 >= worker.given.columns) return null;
    worker.passedOver.settles.add(key(square));
    return [];
  },
  'wrong number of ones': (told, _worker, chance) => {
    const ones = told['ones'] as number;
    if (told.do !== 'exchange' || ones === 0 || told['tens'] === 0) return null;
    return [{ ...told, ones: other(ones, 1, ones + 9, chance) }];
  },
  'tens lost': (told) =>
    told.do === 'exchange' && told['ones'] !== 0 && told['tens'] !== 0
      ? [{ ...told, ones: 0 }]
      : null,
  'exchanged to a wrong square': (told, { given }, chance) => {
    if (told.do !== 'exchange' || told['ones'] === 0 || told['tens'] === 0) return null;
    const [row, column] = told['from'] as Square;
    const places: Square[] = [
      [row, column - 1],
      [row, column + 2],
      [row - 1, column],
      [row, column],
    ];
    const to = chance.pick(places);
    const onMat = to[0] >= 0 && to[1] >= 0 && to[1] < given.columns;
    return onMat ? [{ ...told, to }] : null;
  },
  'missing exchange': (told, worker) => {
    if (told.do !== 'exchange' || (told['from'] as Square)[0] !== 0) return null;
    if (told['tens'] === 0 || told['ones'] === 0) return null;
    worker.passedOver.exchanges.add(key(told['from'] as Square));
    return [];
  },
  'slid off the diagonal': (told, { given }, chance) => {
    if (told.do !== 'slide') return null;
    const [row, column] = told['to'] as Square;
    const to: Square = [row, other(column, 0, given.columns - 1, chance)];
    return [{ ...told, to }];
  },
  'missing slide': (told, worker) => {
    if (told.do !== 'slide') return null;
    worker.passedOver.slides.add(key(told['from'] as Square));
    return [];
  },
  'wrong saying': (told, _worker, chance) => {
    if (told.do !== 'say') return null;
    const answer = told['answer'] as string;
    const at = chance.pick(
      Array.from(answer, (_, index) => index).filter((index) => answer[index] !== '.'),
    );
    const digit = other(Number(answer[at]), 0, 9, chance);
    return [{ ...told, answer: answer.slice(0, at) + digit + answer.slice(at + 1) }];
  },
  'wrong product digit': (told, _worker, chance) =>
    told.do === 'write' ? [{ ...told, digit: other(told['digit'] as number, 0, 9, chance) }] : null,
  'missing product digit': (told) => (told.do === 'write' && told['digit'] !== 0 ? [] : null),
  'extra product digit': (told, worker, chance) => {
    if (told.do !== 'write') return null;
    const place = worker.given.origin + worker.beads.bottomDigits().length;
    return [told, { ...told, place, digit: 1 + chance.below(9) }];
  },
  'wrong point': (told, _worker, chance) =>
    told.do === 'point'
      ? [{ ...told, places: other(told['places'] as number, 0, 6, chance) }]
      : null,
};

function other(right: number, least: number, most: number, chance: Chance): number {
  const all = Array.from({ length: most - least + 1 }, (_, index) => least + index);
  return chance.pick(all.filter((each) => each !== right));
}

export interface Slipping {
  readonly slip: Slip;
  /** What was done in place of what; null: the chance to slip never came. */
  readonly happened: () => { readonly meant: Told; readonly done: readonly Told[] } | null;
}

/** Several slips in one: the first that has something to change changes it. */
export function togetherAtBars(slips: readonly Slipping[]): Slip {
  return (told, worker) =>
    slips.reduce<ReturnType<Slip>>((done, { slip }) => done ?? slip(told, worker), null);
}

/** Slips once, at one of the first few occasions. */
export function slipOnce(name: string, chance: Chance): Slipping {
  let wait = chance.below(30);
  let happened: { meant: Told; done: readonly Told[] } | null = null;
  return {
    happened: () => happened,
    slip: (told, worker) => {
      if (happened !== null) return null;
      wait -= 1;
      const done = wait < 0 ? SLIPS[name]!(told, worker, chance) : null;
      if (done === null) return null;
      happened = { meant: told, done };
      return done;
    },
  };
}
