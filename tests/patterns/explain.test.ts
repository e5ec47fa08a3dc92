import { describe, expect, test } from 'vitest';
import { type Action, replay } from '../../engine/index.ts';
import { CATALOGUE } from '../../engine/patterns/catalogue/index.ts';
import { explain } from '../../engine/patterns/explain.ts';
import { OUTSIDERS } from '../../engine/pupils/outside.ts';
import { problemOf, workBy, written } from './by-hand.ts';

const patternOf = (id: string) => CATALOGUE.find((pattern) => pattern.id === id)!;
const beliefsOf = (id: string) => Object.values(patternOf(id).beliefs)[0]!;
const idsOf = (works: Parameters<typeof explain>[0]) =>
  explain(works).reported.map(({ ids }) => ids.join(' or '));

const NUMBERS = [
  ['347', '26'],
  ['468', '73'],
  ['589', '34'],
  ['796', '58'],
] as const;
const problemsAt = (stage: 'paper' | 'bars' | 'record' | 'cells') =>
  NUMBERS.map(([one, other]) => problemOf(stage, one, other));

/** By hand: every row begins at the units place. 347 × 6 = 2082, 347 × 2 = 694, and so on. */
const UNMOVED = [
  written(['347', '26'], ['2082', '694'], '2776'),
  written(['468', '73'], ['1404', '3276'], '4680'),
  written(['589', '34'], ['2356', '1767'], '4123'),
  written(['796', '58'], ['6368', '3980'], '10348'),
];

describe('written work done by hand', () => {
  test('rows that are not moved over are named, with the steps that show it', () => {
    const { reported, unnamed } = explain(UNMOVED);
    expect(reported.map(({ ids }) => ids)).toEqual([['row not moved over']]);
    expect(reported[0]!.posterior).toBeGreaterThan(0.9);
    expect(reported[0]!.steps).toEqual([0, 1, 2, 3].map((work) => ({ work, step: 'zero:1:0' })));
    expect(unnamed).toBe(false);
  });

  test('two problems with two steps are too few to name anything', () => {
    expect(explain(UNMOVED.slice(0, 2)).reported).toEqual([]);
  });

  test('one problem, however many steps it has, is too little to name anything', () => {
    const twoRows = written(['347', '266'], ['2082', '2082', '694'], '4858');
    expect(explain([twoRows]).reported).toEqual([]);
    const right = written(['468', '73'], ['1404', '32760'], '34164');
    expect(explain([twoRows, right]).reported).toEqual([]);
  });

  test('rows lined up on the left are a rival only where the work does not part them', () => {
    const alike = [
      written(['468', '73'], ['1404', '3276'], '4680'),
      written(['589', '34'], ['2356', '1767'], '4123'),
      written(['796', '58'], ['6368', '3980'], '10348'),
    ];
    expect(idsOf(alike)).toEqual(['row not moved over or rows lined up on the left']);
  });

  test('right work and work with single slips name nothing', () => {
    const right = written(['347', '26'], ['2082', '6940'], '9022');
    const slip = written(['468', '73'], ['1414', '32760'], '34174');
    const other = written(['589', '34'], ['2356', '17670'], '20026');
    expect(explain([right, slip, other])).toMatchObject({ reported: [], unnamed: false });
  });

  test('no zero in any number: what happens at zeros is not tested', () => {
    const { notTested } = explain(UNMOVED);
    expect(notTested).toContain('row closed up over a zero');
    expect(notTested).toContain('zero times a number makes the number');
    expect(notTested).toContain('point set as in adding');
    expect(notTested).not.toContain('row not moved over');
    expect(notTested).not.toContain('carry never handed on');
  });

  test('what was first written counts, though it was mended', () => {
    const mended = UNMOVED.map((work) => {
      const actions = work.log.map(({ action }) => action);
      const begun = actions.findIndex(
        (action) => action.do === 'write' && 'line' in action && action.line === 'product',
      );
      const rub: Action = { do: 'rub', line: 'partial:1', place: 0 };
      return replay(work.problem, [...actions.slice(0, begun), rub, ...actions.slice(begun)]);
    });
    expect(idsOf(mended)).toContain('row not moved over');
  });

  test('no work at all: nothing is named, all is untested', () => {
    expect(explain([])).toEqual({ reported: [], unnamed: false, notTested: [] });
    const { reported, notTested } = explain([replay(problemOf('paper', '347', '26'), [])]);
    expect(reported).toEqual([]);
    expect(notTested.length).toBeGreaterThan(40);
  });
});

describe('pupils who hold patterns', () => {
  test.each([
    ['paper', 'carry added before multiplying'],
    ['paper', 'units digit of the multiplier used for every row'],
    ['bars', 'slid straight down'],
    ['bars', 'counts one bead short'],
    ['bars', 'multiplicand laid back to front'],
    ['record', 'row not moved over'],
    ['record', 'one laid for all the ten-bars'],
    ['cells', 'digits added straight down the columns'],
    ['cells', 'adds instead of multiplying'],
  ] as const)('at %s: %s', (stage, id) => {
    const works = problemsAt(stage).map((problem, seed) => workBy(problem, [beliefsOf(id)], seed));
    expect(idsOf(works)).toEqual([id]);
  });

  test('two at once are both named', () => {
    const held = ['carry never handed on', 'row not moved over'];
    const works = problemsAt('paper').map((problem) => workBy(problem, held.map(beliefsOf)));
    expect(idsOf(works).sort()).toEqual(held);
  });

  test('a row left out is seen as such, and what is done besides is named with it', () => {
    const held = ['only the units row worked', 'counts one bead short'];
    const works = problemsAt('bars').map((problem, seed) =>
      workBy(problem, held.map(beliefsOf), seed),
    );
    expect(idsOf(works).sort()).toEqual([...held].sort());
  });

  test('slid straight down and rows not moved over end alike, and are told apart by what was done', () => {
    const works = problemsAt('record').map((problem) =>
      workBy(problem, [beliefsOf('slid straight down')]),
    );
    expect(idsOf(works)).toEqual(['slid straight down']);
  });

  test('works of several stages are explained together, each pattern by its own stages', () => {
    const works = [...problemsAt('paper').slice(0, 2), ...problemsAt('cells').slice(2)].map(
      (problem) => workBy(problem, [beliefsOf('adds instead of multiplying')]),
    );
    expect(idsOf(works)).toEqual(['adds instead of multiplying']);
  });

  test('rivals that would have done the very same are reported together', () => {
    const own = patternOf('carry never handed on');
    const twin = { ...own, id: 'its twin' };
    const works = problemsAt('paper').map((problem) => workBy(problem, [own.beliefs['']!]));
    expect(explain(works, [own, twin]).reported[0]!.ids).toEqual([own.id, twin.id]);
  });

  test('something regular that is in no file is said to be so, unnamed', () => {
    const works = problemsAt('paper').map((problem) =>
      workBy(problem, [OUTSIDERS.find(({ id }) => id === 'even digits halved')!.beliefs]),
    );
    expect(explain(works)).toMatchObject({ reported: [], unnamed: true });
  });

  test('slips alone name nothing', () => {
    for (let seed = 0; seed < 20; seed += 1) {
      const works = problemsAt('paper').map((problem, at) => workBy(problem, [], 100 * seed + at));
      expect(explain(works).reported).toEqual([]);
    }
  });
});
