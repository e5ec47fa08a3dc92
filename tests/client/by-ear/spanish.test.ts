import { expect, it } from 'vitest';
import { pagesForFile } from '../../support/pages-for-file.ts';
import { marksOf } from '../presented-work.ts';
import { sitDown } from './child.ts';

const pages = pagesForFile();

it('by keyboard and screen reader alone a child works in Spanish (bars1)', async () => {
  const { child, book } = await sitDown(
    pages,
    { stage: 'bars1', multiplicand: '2', multiplier: '3' },
    { locale: 'es-ES' },
  );
  await child.reads('heading', 'Pon 2 abajo y 3 a un lado.');
  await child.goesTo('gridcell', 'fila unidades, columna unidades, unidades, vacía');
  await child.presses('ArrowDown');
  await child.isOn('gridcell', 'número de abajo, unidades: sin ficha');
  await child.presses('2', 'ArrowUp', 'ArrowRight', '3');
  await child.hears('3 puesto. Pon las barras de la primera fila.');
  await child.presses('PageDown', 'ArrowLeft', '+', '+', '2');
  await child.hears('3 barras de 2: puestas.');
  await child.presses('PageDown', 'Enter');
  await child.isOn('heading', 'unidades, 3 barras de 2');
  await child.presses('7', 'Enter', 'Escape');
  await child.uses('Comprobar');
  await child.hears('Mira otra vez lo que está levantado.');
  await child.goesTo('gridcell', /mírala otra vez$/);
  await child.presses('Control+z');
  await child.hears('Deshecho: ');
  await child.presses('Enter', '6', 'Enter', 'Escape');
  await child.isOn('gridcell', 'fila unidades, columna unidades, unidades, 1 barra de 6, vale 6');
  await child.presses('PageDown', '6', 'Enter');
  await child.hears('Dicho: 6.');
  await child.uses('Esta fila está lista');
  await child.hears('Esta fila está lista. Esa fila está bien.');
  await child.uses('Leer');
  await child.goesTo('button', 'producto, unidades: vacío');
  await child.presses('6');
  await child.hears('6 escrito en las unidades. ¿Está listo el producto?');
  await child.uses('El producto está listo');
  await child.uses('He terminado');
  await child.hears('Este problema está terminado.');
  await child.isOn('button', 'Ver mi trabajo');
  await child.presses('Enter');
  await child.isOn('heading', 'Tu trabajo');
  await child.reads('status', 'Tu docente tiene tu trabajo.');
  expect(marksOf(book.works())).not.toBe('1');
  expect(book.works()[0]?.steps.filter(({ status }) => status !== 'first')).toMatchObject([
    { id: 'counted:0:0', status: 'corrected' },
  ]);
});
