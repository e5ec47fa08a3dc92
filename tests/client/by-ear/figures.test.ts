import { describe, expect, it } from 'vitest';
import { pagesForFile } from '../../support/pages-for-file.ts';
import { marksOf } from '../presented-work.ts';
import { sitDown, statusesOf } from './child.ts';

const pages = pagesForFile();

describe('by keyboard and screen reader alone', () => {
  it('a child writes each partial product (record)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'record',
      multiplicand: '3',
      multiplier: '12',
    });
    await child.reads('heading', 'Set 3 along the bottom and 12 up the side.');
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('ArrowDown', '3', 'ArrowUp', 'ArrowRight', 'ArrowUp', '1', '2');
    await child.hears('2 laid. Lay the bars of the first row.');
    await child.presses('PageDown', 'ArrowLeft', '+', '3');
    await child.hears('2 bars of 3 laid.');
    await child.presses('PageDown', 'Enter');
    await child.isOn('heading', 'units, 2 bars of 3');
    await child.presses('6', 'Enter', 'Escape');
    await child.isOn('gridcell', 'row units, column units, place units, 1 bar of 6, makes 6');

    await child.presses('PageDown');
    await child.hears('Rows.');
    await child.uses('first row, × 2');
    await child.hears('The first row begins. Write what the first row makes.');
    await child.goesTo('button', /^first row, .*:/);
    await child.isOn('button', 'first row, units: empty', 'pressed');
    await child.presses('6');
    await child.hears('6 written at the units. Is the first row done?');
    await child.isOn('button', 'first row, tens: empty', 'pressed');
    await child.uses('This row is done');
    await child.hears('This row is done. That row is right.');

    await child.uses('Lay');
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('ArrowUp', '-', '3');
    await child.hears('1 bar of 3 laid. Touch the digit that makes the second row.');
    await child.presses('PageDown', 'PageDown');
    await child.uses('second row, × 1');
    await child.hears('The second row begins. Write what the second row makes.');
    await child.goesTo('button', 'second row, units: empty');
    await child.presses('0');
    await child.isOn('button', 'second row, tens: empty', 'pressed');
    await child.presses('3');
    await child.hears('3 written at the tens. Is the second row done?');
    await child.uses('This row is done');
    await child.hears('That row is right.');

    await child.uses('Slide');
    await child.goesTo('gridcell', /^row tens, column units/);
    await child.presses(' ', 'ArrowDown', 'ArrowLeft', ' ');
    await child.hears('Slid to the tens, first row. Read the product and write it.');
    await child.uses('Read');
    await child.goesTo('button', 'product, units: empty');
    await child.presses('6', '3');
    await child.hears('3 written at the tens. Is the product done?');
    await child.finishes();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child writes facts on the squares and adds along the diagonals (cells)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'cells',
      multiplicand: '14',
      multiplier: '3',
    });
    await child.reads('heading', 'Set 14 along the bottom and 3 up the side.');
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('ArrowDown', 'ArrowLeft', '1', '4', 'ArrowUp', 'ArrowRight', '3');
    await child.hears('3 laid. Write the facts of the first row on their squares.');

    await child.presses('PageDown');
    await child.hears('Facts.');
    await child.presses('ArrowLeft', '2');
    await child.hears('2 in the lower corner');
    await child.isOn('gridcell', 'row units, column units, place units, 2 in the lower corner');
    await child.presses('ArrowLeft', 'Enter');
    await child.hears('Lower corner');
    await child.presses('Enter');
    await child.hears('Upper corner');
    await child.presses('1');
    await child.hears('1 in the upper corner');
    await child.presses('3');
    await child.hears('3 in the lower corner');
    await child.isOn(
      'gridcell',
      'row units, column tens, place tens, 1 in the upper corner, 3 in the lower corner',
    );
    await child.uses('This row is done');
    await child.hears('That row is right.');

    await child.uses('Add');
    await child.hears('Add. Add along the diagonals and write the product.');
    await child.goesTo('button', 'product, units: empty');
    await child.presses('2', '4');
    await child.hears('4 written at the tens. Is the product done?');
    await child.finishes();
    expect(marksOf(book.works())).toBe('1');
  });

  it('a child works the written algorithm, with what is carried (paper)', async () => {
    const { child, book } = await sitDown(pages, {
      stage: 'paper',
      multiplicand: '14',
      multiplier: '13',
    });
    await child.reads('heading', 'Touch the digit that makes the first row.');
    await child.uses('first row, × 3');
    await child.hears('The first row begins. Multiply and write the first row.');
    await child.goesTo('button', 'first row, units: empty');
    await child.presses('2');
    await child.hears('2 written at the units.');
    await child.isOn('button', 'first row, tens: empty', 'pressed');
    await child.presses('+');
    await child.hears('Carry');
    await child.presses('1');
    await child.hears('1 carried');
    await child.isOn('button', 'first row, tens: empty, 1 carried', 'pressed');
    await child.presses('4');
    await child.hears('4 written at the tens. Is the first row done?');
    await child.uses('This row is done');
    await child.hears('That row is right.');

    await child.uses('second row, × 1');
    await child.hears('The second row begins. Multiply and write the second row.');
    await child.goesTo('button', 'second row, units: empty');
    await child.presses('0', '4', '1');
    await child.hears('1 written at the hundreds. Is the second row done?');
    await child.uses('This row is done');

    await child.uses('Add');
    await child.hears('Add. Add the rows and write the product.');
    await child.goesTo('button', 'product, units: empty');
    await child.presses('2', '8', '1');
    await child.hears('1 written at the hundreds. Is the product done?');
    await child.finishes();
    expect(marksOf(book.works())).toBe('1');
  });
});

describe('a child who slipped hears it, finds what is lifted and mends it', () => {
  it('in a partial product read from the bars (record)', async () => {
    const { child, book } = await sitDown(
      pages,
      { stage: 'record', multiplicand: '3', multiplier: '12' },
      { done: 6 },
    );
    await child.goesTo('button', 'first row, units: empty');
    await child.presses('7');
    await child.uses('This row is done');
    await child.hears('Look again at what is lifted.');
    await child.goesTo('button', 'first row, units: 7, look again');
    await child.presses('6');
    await child.hears('6 written at the units.');
    await child.reads('button', 'first row, units: 6');
    await child.uses('Check');
    await child.hears('All is right so far.');
    expect(await statusesOf({ child, book })).toMatchObject({ 'row:0:0': 'corrected' });
  });

  it('in a fact on its square (cells)', async () => {
    const { child, book } = await sitDown(
      pages,
      { stage: 'cells', multiplicand: '14', multiplier: '3' },
      { done: 3 },
    );
    await child.goesTo('gridcell', /^row units, column units/);
    await child.presses('3', 'ArrowLeft', 'Enter', 'Enter', '1', '3');
    await child.uses('This row is done');
    await child.hears('Look again at what is lifted.');
    await child.goesTo('gridcell', /look again$/);
    await child.isOn('gridcell', /^row units, column units, .*3 in the lower corner, look again/);
    await child.presses('2');
    await child.hears('2 in the lower corner');
    await child.uses('Check');
    await child.hears('All is right so far.');
    expect(await statusesOf({ child, book })).toMatchObject({ 'fact:0:0': 'corrected' });
  });

  it('in a digit of a row (paper), and hears where help points', async () => {
    const { child, book } = await sitDown(
      pages,
      { stage: 'paper', multiplicand: '14', multiplier: '12' },
      { done: 2 },
    );
    await child.goesTo('button', 'first row, units: 8');
    await child.presses('ArrowLeft', '3');
    await child.hears('3 written at the tens.');
    await child.uses('This row is done');
    await child.hears('Look again at what is lifted.');
    await child.uses('Help me');
    await child.uses('Help me');
    await child.hears('Look at the marked place.');
    await child.goesTo('button', 'first row, tens: 3, marked, look again');
    await child.presses('2');
    await child.hears('2 written at the tens.');
    await child.uses('Check');
    await child.hears('All is right so far.');
    expect(await statusesOf({ child, book })).toMatchObject({ 'row:0:1': 'hinted' });
  });
});
