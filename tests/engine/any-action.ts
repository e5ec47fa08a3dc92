import fc from 'fast-check';
import type { Action } from '../../engine/index.ts';
import { actionsOf } from './play.ts';

/** Any action that the wire lets through, on a small mat so that much of it is possible. */
export function anyAction(): fc.Arbitrary<Action> {
  const square = fc.tuple(fc.nat({ max: 3 }), fc.nat({ max: 5 }));
  const tile = { edge: fc.constantFrom('bottom', 'right'), index: fc.nat({ max: 4 }) };
  const place = fc.integer({ min: -1, max: 8 });
  const digit = fc.nat({ max: 9 });
  const slot = fc.constantFrom('own', 'fromRight');
  const line = fc.constantFrom('product', 'partial:0', 'partial:1', 'carry:0', 'carry:product');
  const tell = (name: string, fields: object) =>
    fc.record({ do: fc.constant(name), ...fields }) as fc.Arbitrary<object>;
  const told = fc.oneof(
    { weight: 4, arbitrary: tell('layTile', { ...tile, digit }) },
    { weight: 1, arbitrary: tell('liftTile', tile) },
    {
      weight: 6,
      arbitrary: tell('layBars', {
        square,
        kind: fc.integer({ min: 1, max: 9 }),
        count: fc.integer({ min: 1, max: 9 }),
      }),
    },
    {
      weight: 2,
      arbitrary: tell('liftBars', {
        square,
        kind: fc.integer({ min: 1, max: 10 }),
        count: fc.integer({ min: 1, max: 3 }),
      }),
    },
    { weight: 3, arbitrary: tell('count', { square, total: fc.nat({ max: 90 }) }) },
    {
      weight: 1,
      arbitrary: tell('makeTen', { square, bars: fc.constantFrom([6, 4], [7, 3], [5, 5]) }),
    },
    {
      weight: 2,
      arbitrary: tell('exchange', {
        from: square,
        tens: fc.integer({ min: 0, max: 2 }),
        to: square,
        ones: fc.integer({ min: 1, max: 3 }),
      }),
    },
    { weight: 3, arbitrary: tell('slide', { from: square, to: square }) },
    {
      weight: 1,
      arbitrary: tell('begin', { line: fc.constant('partial:0'), row: fc.nat({ max: 2 }) }),
    },
    { weight: 2, arbitrary: tell('write', { line, place, digit }) },
    { weight: 1, arbitrary: tell('rub', { line, place }) },
    { weight: 2, arbitrary: tell('write', { square, slot, digit }) },
    { weight: 1, arbitrary: tell('write', { square, slot, digit, of: square }) },
    { weight: 1, arbitrary: tell('rub', { square, slot }) },
    {
      weight: 1,
      arbitrary: tell('say', {
        row: fc.nat({ max: 2 }),
        answer: fc.constantFrom('0', '3736', 'x'),
      }),
    },
    {
      weight: 1,
      arbitrary: tell('point', { on: fc.constant('product'), places: fc.nat({ max: 3 }) }),
    },
    { weight: 1, arbitrary: fc.constant({ do: 'check' }) },
    { weight: 1, arbitrary: tell('hint', { level: fc.constantFrom(1, 2, 3) }) },
    {
      weight: 1,
      arbitrary: tell('finish', { what: fc.constantFrom('row:0', 'row:1', 'product') }),
    },
    { weight: 3, arbitrary: fc.constant({ do: 'undo' }) },
  );
  return told.map((each) => actionsOf([each])[0]!);
}
