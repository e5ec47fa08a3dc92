import { describe, expect, it } from 'vitest';
import { pagesForFile } from '../../support/pages-for-file.ts';
import { marksOf } from '../presented-work.ts';
import { sitDown, statusesOf } from './child.ts';

const pages = pagesForFile();

describe('by keyboard and screen reader alone', () => {
  it('a child finds out what squares are worth (walk)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'walk',
      seed: 3,
      prompts: 3,
      categories: true,
    });
    await child.reads('heading', 'What is one bead worth on the marked square?');
    await child.goesTo('gridcell', /asked about$/);
    await child.isOn('gridcell', 'row hundreds, column hundred millions, empty, asked about');
    await child.presses(...'10000000000', 'Enter');
    await child.hears('Said: 10000000000.');
    await child.uses('Next question');
    await child.isOn('heading', 'Which square is worth 100,000? Press it.');

    await child.goesTo('gridcell', /^row/);
    await child.toSquare([0, 5]);
    await child.isOn('gridcell', 'row units, column hundred thousands, empty');
    await child.presses(' ');
    await child.hears('Row units, column hundred thousands.');
    await child.isOn('gridcell', 'row units, column hundred thousands, empty', 'selected');
    await child.uses('Question 3');
    await child.hears('tens times thousands: which square? Press it.');
    await child.goesTo('gridcell', /^row/);
    await child.toSquare([1, 3]);
    await child.isOn('gridcell', 'row tens, column thousands, empty');
    await child.presses(' ');
    await child.hears('Row tens, column thousands.');

    await child.uses('I am finished');
    await child.seesWork();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child lays numbers told in words and reads them back (build)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'build',
      multiplicand: '14',
      multiplier: '2',
    });
    await child.reads('heading', 'Set fourteen along the bottom and two up the side.');
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('ArrowDown', 'ArrowLeft', '1', '4');
    await child.isOn('gridcell', 'number below, units: 4');
    await child.presses('ArrowUp', 'ArrowRight', '2');
    await child.hears('2 laid. Which number stands along the bottom?');
    await child.isOn('gridcell', 'number at the side, units: 2');

    await child.presses('PageDown');
    await child.hears('Read back.');
    await child.presses('1', '4');
    await child.hears('14');
    await child.presses('Enter');
    await child.hears('Said: 14.');
    await child.uses('Next question');
    await child.isOn('heading', 'Which number stands up the side?');
    await child.uses('2');
    await child.uses('Say it');
    await child.hears('Said: 2.');
    await child.isOn('heading', 'Which number stands up the side?');
    await child.uses('I am finished');
    await child.seesWork();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child is asked to look again at a question, finds it and mends it (walk)', async () => {
    const { child, book } = await sitDown(pages, { stage: 'walk', seed: 3, prompts: 2 });
    await child.goesTo('gridcell', /asked about$/);
    await child.presses('1', 'Enter');
    await child.uses('Check');
    await child.hears('Look again at what is lifted.');
    await child.goesTo('gridcell', /asked about, look again$/);
    await child.reads('button', 'Question 1, look again');
    await child.presses(...'10000000000', 'Enter');
    await child.hears('Said: 10000000000.');
    await child.uses('Check');
    await child.hears('All is right so far.');
    await child.reads('button', 'Question 1, answered');
    expect(await statusesOf({ child, book })).toEqual({
      'prompt:0': 'corrected',
      'prompt:1': 'open',
    });
  });
});
