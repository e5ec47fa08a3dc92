import { afterEach, describe, it } from 'vitest';
import { pagesForFile } from '../../support/pages-for-file.ts';
import { sitDown } from './child.ts';

const pages = pagesForFile();
const NUMBERS = { stage: 'bars1', multiplicand: '64', multiplier: '2' } as const;

afterEach(() => {
  pages.server.mood = 'well';
});

describe('what happens is told to ears, the focus staying where it is (WCAG 2.2, 4.1.3)', () => {
  it('the same twice is said twice', async () => {
    const { child } = await sitDown(pages, NUMBERS);
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('ArrowDown', '4');
    await child.hears('4 laid.');
    await child.presses('4');
    await child.hears('4 laid.');
    await child.isOn('gridcell', 'number below, units: 4');
  });

  it('what cannot be done is said, and said again', async () => {
    const { child } = await sitDown(pages, NUMBERS);
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('Control+z');
    await child.hears('There is nothing to undo.');
    await child.presses('Control+z');
    await child.hears('There is nothing to undo.');
    await child.presses(' ');
    await child.hears('Press a place beside the mat, then a digit.');
  });

  it('a move that is taken back at once is said each time ("bounce")', async () => {
    const { child } = await sitDown(pages, { ...NUMBERS, policy: { bounce: true } });
    await child.goesTo('gridcell', /^row units, column units/);
    for (const digit of ['7', '8']) {
      await child.presses('ArrowDown', digit);
      await child.hears(`${digit} laid. That does not fit yet. Try once more.`);
    }
  });

  it('picked bars are said as a sum', async () => {
    const { child } = await sitDown(pages, NUMBERS, { done: 5 });
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('ArrowLeft', 'Enter');
    await child.isOn('heading', 'tens, 2 bars of 6');
    await child.uses('bar of 6, 1 of 2');
    await child.uses('bar of 6, 2 of 2');
    await child.hears('6 + 6');
    await child.uses('Make a ten with 4 of the 6');
    await child.hears('A ten is made.');
    await child.isOn('heading', /^tens, 1 bar of 10, /);
  });

  it('what is not saved is said, in whatever the child is doing', async () => {
    const { child } = await sitDown(pages, NUMBERS);
    await child.goesTo('gridcell', /^row units, column units/);
    pages.server.mood = 'away';
    await child.presses('ArrowDown', '4');
    await child.hears('Not saved yet: 1 move. Work on.');
    await child.isOn('gridcell', 'number below, units: 4');
    pages.server.mood = 'signedOut';
    await child.hears('Please open this again from your course.');
  });

  it('the list of keys is read in a dialog that gives the focus back', async () => {
    const { child } = await sitDown(pages, NUMBERS);
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('?');
    await child.isOn('button', 'Close');
    await child.reads('dialog', 'Keys');
    await child.presses('Escape');
    await child.isOn('gridcell', /^row units, column units/);
  });
});
