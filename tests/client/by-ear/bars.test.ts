import { describe, expect, it } from 'vitest';
import { pagesForFile } from '../../support/pages-for-file.ts';
import { marksOf } from '../presented-work.ts';
import { sitDown, statusesOf } from './child.ts';

const pages = pagesForFile();

describe('by keyboard and screen reader alone', () => {
  it('a child lays, counts and exchanges one row (bars1)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'bars1',
      multiplicand: '13',
      multiplier: '4',
    });
    await child.reads('heading', 'Set 13 along the bottom and 4 up the side.');

    await child.goesTo('gridcell', 'row units, column units, place units, empty');
    await child.presses('ArrowDown');
    await child.isOn('gridcell', 'number below, units: no tile');
    await child.presses('ArrowLeft', '1');
    await child.hears('1 laid.');
    await child.isOn('gridcell', 'number below, units: no tile');
    await child.presses('3');
    await child.hears('3 laid.');
    await child.isOn('gridcell', 'number below, units: 3');
    await child.presses('ArrowUp', 'ArrowRight');
    await child.isOn('gridcell', 'number at the side, units: no tile');
    await child.presses('4');
    await child.hears('4 laid. Lay the bars of the first row.');

    await child.presses('PageDown');
    await child.hears('Lay.');
    await child.presses('ArrowLeft');
    await child.isOn('gridcell', 'row units, column units, place units, empty');
    await child.presses('+', '+', '+');
    await child.hears('How many? 4');
    await child.presses('3');
    await child.hears('4 bars of 3 laid.');
    await child.isOn('gridcell', 'row units, column units, place units, 4 bars of 3, makes 12');
    await child.presses('ArrowLeft', '1');
    await child.hears('4 bars of 1 laid. Count each pile of the first row. Exchange every ten.');

    await child.presses('ArrowRight', 'Enter');
    await child.isOn('heading', 'units, 4 bars of 3');
    await child.hears('Count this pile. Is there a ten in it?');
    await child.presses('1', '2');
    await child.hears('12');
    await child.presses('Enter');
    await child.hears(
      'Counted: 12. Exchange the tens: each becomes one in the square to the left.',
    );
    await child.isOn('heading', 'units, 1 bar of 10, 1 bar of 2');
    await child.uses('Exchange 1 ten');
    await child.hears('How many do you lay there?');
    await child.presses('1');
    await child.hears('1 ten exchanged, 1 laid in the tens.');
    await child.isOn('heading', 'units, 1 bar of 2');
    await child.uses('Open this square: tens');
    await child.isOn('heading', 'tens, 5 bars of 1');
    await child.presses('5', 'Enter');
    await child.hears('Counted: 5. Go on to the left, or back to the mat.');
    await child.presses('Escape');
    await child.hears('What does the first row make?');
    await child.isOn('gridcell', 'row units, column tens, place tens, 1 bar of 5, makes 5');

    await child.presses('PageDown', 'PageDown');
    await child.hears('Row.');
    await child.presses('5', '2');
    await child.hears('52');
    await child.presses('Enter');
    await child.hears('Said: 52. Is the first row done?');
    await child.uses('This row is done');
    await child.hears('That row is right.');
    await child.uses('Read');
    await child.hears('Read. Read the product and write it.');
    await child.goesTo('button', 'product, units: empty');
    await child.presses('2');
    await child.hears('2 written at the units.');
    await child.isOn('button', 'product, tens: empty', 'pressed');
    await child.presses('5');
    await child.hears('5 written at the tens. Is the product done?');
    await child.finishes();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child slides a row down and combines (bars)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'bars',
      multiplicand: '3',
      multiplier: '12',
    });
    await child.reads('heading', 'Set 3 along the bottom and 12 up the side.');
    await child.goesTo('gridcell', 'row units, column units, place units, empty');
    await child.presses('ArrowDown', '3');
    await child.isOn('gridcell', 'number below, units: 3');
    await child.presses('ArrowUp', 'ArrowRight', 'ArrowUp', '1');
    await child.hears('1 laid.');
    await child.isOn('gridcell', 'number at the side, units: no tile');
    await child.presses('2');
    await child.hears('2 laid. Lay the bars of the first row.');

    await child.presses('PageDown', 'ArrowLeft', '+', '3');
    await child.hears('2 bars of 3 laid.');
    await child.presses('PageDown');
    await child.hears('Count.');
    await child.presses('Enter');
    await child.isOn('heading', 'units, 2 bars of 3');
    await child.presses('6', 'Enter', 'Escape');
    await child.isOn('gridcell', 'row units, column units, place units, 1 bar of 6, makes 6');
    await child.presses('PageDown', '6', 'Enter');
    await child.hears('Said: 6. Is the first row done?');
    await child.uses('This row is done');
    await child.hears('That row is right.');

    await child.uses('Lay');
    await child.hears('Lay. Lay the bars of the second row.');
    await child.goesTo('gridcell', 'row units, column units, place units, 1 bar of 6, makes 6');
    await child.presses('ArrowUp', '-');
    await child.isOn('gridcell', 'row tens, column units, place tens, empty');
    await child.hears('How many? 1');
    await child.presses('3');
    await child.hears('1 bar of 3 laid. What does the second row make?');
    await child.presses('PageDown', 'PageDown', '3', '0', 'Enter');
    await child.hears('Said: 30. Is the second row done?');
    await child.uses('This row is done');
    await child.hears('That row is right.');

    await child.uses('Slide');
    await child.hears('Slide. Slide the piles down along the diagonals.');
    await child.goesTo('gridcell', 'row tens, column units, place tens, 1 bar of 3, makes 3');
    await child.presses(' ');
    await child.hears('Picked up.');
    await child.isOn(
      'gridcell',
      'row tens, column units, place tens, 1 bar of 3, makes 3',
      'selected',
    );
    await child.presses('ArrowDown', 'ArrowLeft');
    await child.isOn('gridcell', 'row units, column tens, place tens, empty');
    await child.presses(' ');
    await child.hears('Slid to the tens, first row. Read the product and write it.');
    await child.isOn('gridcell', 'row units, column tens, place tens, 1 bar of 3, makes 3');

    await child.uses('Read');
    await child.goesTo('button', 'product, units: empty');
    await child.presses('6', '3');
    await child.hears('3 written at the tens. Is the product done?');
    await child.finishes();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child lays a fact in units and tens (facts)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'facts',
      multiplicand: '4',
      multiplier: '3',
    });
    await child.reads('heading', 'Set 4 along the bottom and 3 up the side.');
    await child.goesTo('gridcell', 'row units, column units, place units, empty');
    await child.presses('ArrowDown', '4', 'ArrowUp', 'ArrowRight', '3');
    await child.isOn('gridcell', 'number at the side, units: 3');
    await child.hears('3 laid. Lay the facts of the first row.');

    await child.presses('PageDown');
    await child.hears('Lay.');
    await child.reads('status', '4 × 3');
    await child.presses('ArrowLeft');
    await child.isOn('gridcell', 'row units, column units, place units, empty, asked about');
    await child.presses('2');
    await child.hears('1 bar of 2 laid.');
    await child.presses('ArrowLeft', '1');
    await child.hears('1 bar of 1 laid. What does the first row make?');
    await child.isOn('gridcell', 'row units, column tens, place tens, 1 bar of 1, makes 1');

    await child.presses('PageDown', 'PageDown', '1', '2', 'Enter');
    await child.hears('Said: 12. Is the first row done?');
    await child.uses('This row is done');
    await child.uses('Read');
    await child.hears('Read. Read the product and write it.');
    await child.goesTo('button', 'product, units: empty');
    await child.presses('2', '1');
    await child.hears('1 written at the tens. Is the product done?');
    await child.finishes();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child works on a free mat (open)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'open',
      multiplicand: '3',
      multiplier: '4',
    });
    await child.reads('heading', 'Set 3 along the bottom and 4 up the side.');
    await child.goesTo('gridcell', 'row units, column units, place units, empty');
    await child.presses('ArrowDown', '3', 'ArrowUp', 'ArrowRight', '4');
    await child.hears('4 laid.');
    await child.presses('PageDown', 'ArrowLeft', '+', '+', '+', '3');
    await child.hears('4 bars of 3 laid.');
    await child.presses('PageDown', 'Enter');
    await child.isOn('heading', 'units, 4 bars of 3');
    await child.presses('1', '2', 'Enter');
    await child.hears('Counted: 12.');
    await child.uses('To another square');
    await child.isOn('heading', 'The tens are in your hand. Where does the new bar go?');
    await child.goesTo('gridcell', /^row units, column units, /);
    await child.presses('ArrowLeft', ' ');
    await child.hears('How many do you lay there, in the tens?');
    await child.presses('1');
    await child.hears('1 ten exchanged, 1 laid in the tens.');
    await child.isOn('gridcell', 'row units, column tens, place tens, 1 bar of 1, makes 1');
    await child.uses('Row');
    await child.toSquare([0, 0]);
    await child.presses('1', '2', 'Enter');
    await child.hears('Said: 12.');
    await child.uses('Read');
    await child.goesTo('button', 'product, units: empty');
    await child.presses('2', '1');
    await child.hears('1 written at the tens.');
    await child.finishes();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child is asked to look again, finds what is lifted and mends it', async () => {
    const { child, book } = await sitDown(
      pages,
      { stage: 'bars1', multiplicand: '13', multiplier: '4' },
      { done: 5 },
    );
    await child.reads('heading', 'Count each pile of the first row. Exchange every ten.');
    await child.goesTo('gridcell', /^row units, column units, /);
    await child.presses('Enter');
    await child.isOn('heading', 'units, 4 bars of 3');
    await child.presses('1', '3', 'Enter', 'Escape');
    await child.uses('Check');
    await child.hears('Look again at what is lifted.');
    await child.goesTo('gridcell', /look again$/);
    await child.isOn(
      'gridcell',
      'row units, column units, place units, 1 bar of 10, 1 bar of 3, makes 13, look again',
    );
    await child.presses('Control+z');
    await child.hears('Undone: Counted: 13.');
    await child.isOn('gridcell', /4 bars of 3, makes 12, look again/);
    await child.presses('Enter', '1', '2', 'Enter', 'Escape');
    await child.isOn('gridcell', /1 bar of 10, 1 bar of 2, makes 12$/);
    await child.uses('Check');
    await child.hears('All is right so far.');
    expect(await statusesOf({ child, book })).toMatchObject({
      'counted:0:0': 'corrected',
      'laid:0:0': 'first',
    });
  });

  it('a child is shown by help where to look, and finds the place', async () => {
    const { child, book } = await sitDown(
      pages,
      { stage: 'bars1', multiplicand: '13', multiplier: '4' },
      { done: 3 },
    );
    await child.uses('Help me');
    await child.hears('Which square still wants bars?');
    await child.uses('Help me');
    await child.hears('Look at the marked place.');
    await child.goesTo('gridcell', /marked$/);
    await child.isOn('gridcell', 'row units, column units, place units, empty, marked');
    await child.uses('Help me');
    await child.hears('Lay 4 bars of 3 on the marked square.');
    expect(await statusesOf({ child, book })).toMatchObject({ 'tile:bottom:0': 'first' });
  });
});
