import { expect, onTestFinished, test, vi } from 'vitest';
import { parseProblem, replay, type WrittenProblem } from '../../engine/index.ts';
import { lay, standingOf } from '../../server/attempts/work.ts';
import { movesOf, numbered, ONE_ROW, TWO_ROWS } from './page.ts';

const LONG: WrittenProblem = {
  stage: 'paper',
  multiplicand: '987654',
  multiplier: '98765',
  policy: { control: 'eachStep' },
};

/** Digits written over one another: as much to judge as a child with a script can make. */
const scribbles = Array.from({ length: 150 }, (_, n) =>
  n < 5
    ? { do: 'begin', line: `partial:${n}`, row: n }
    : { do: 'write', line: n % 3 ? `partial:${n % 5}` : 'product', place: n % 11, digit: n % 10 },
);
// biome-ignore lint/suspicious/noExplicitAny: as the wire schema and the engine have read them.
const entriesOf = (actions: readonly unknown[]) => numbered(actions) as any[];

/** How often others had a turn while `work` was going on. */
async function turnsDuring(work: () => Promise<unknown>): Promise<number> {
  let turns = 0;
  let going = true;
  const turn = () => {
    turns += 1;
    if (going) setImmediate(turn);
  };
  setImmediate(turn);
  await work();
  going = false;
  return turns;
}

/** Until the test ends all that is done seems to last a second: how fast the machine is must not matter. */
function slowDown(): void {
  let now = performance.now();
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => {
    now += 1_000;
    return now;
  });
  onTestFinished(() => clock.mockRestore());
}

test('on a slow machine everybody else has a turn after each action that is laid, and after each 25 that are replayed', async () => {
  const blank = await standingOf([LONG], []);
  const entries = entriesOf(scribbles);
  slowDown();
  expect(await turnsDuring(() => lay(blank, entries))).toBeGreaterThanOrEqual(150);
  expect(await turnsDuring(() => standingOf([LONG], entries))).toBeGreaterThanOrEqual(150 / 25);
});

test('what is replayed in parts is the same as in one go, and the same as what was laid', async () => {
  const actions = [...Array(150).fill({ do: 'check' }), ...movesOf(TWO_ROWS)];
  const entries = entriesOf(actions);
  const read = parseProblem(TWO_ROWS);
  const whole = read.ok ? replay(read.value, actions) : null;
  const parts = await standingOf([TWO_ROWS], entries);
  expect(parts.works).toEqual([whole]);
  expect((await lay(await standingOf([TWO_ROWS], []), entries)).standing).toEqual(parts);
});

test('a problem that nobody touched is there, untouched', async () => {
  const { works } = await standingOf([ONE_ROW, TWO_ROWS], entriesOf(movesOf(ONE_ROW)));
  expect(works.map(({ finished }) => finished.problem)).toEqual([true, false]);
});
