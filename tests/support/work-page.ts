import type { Locator, Page } from 'playwright-core';
import type { ChildAction } from './child-work.ts';

/** The child's page: a whole page or a frame of one. */
type Scope = Pick<Page, 'getByRole'>;

const PLACES = ['units', 'tens', 'hundreds', 'thousands', 'ten thousands', 'hundred thousands'];
const ROWS = ['first row', 'second row', 'third row', 'fourth row'];

const button = (scope: Scope | Locator, name: string | RegExp): Locator =>
  scope.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });

const group = (scope: Scope, name: string): Locator =>
  scope.getByRole('group', { name, exact: true });

const square = (scope: Scope, [row, column]: readonly [number, number]): Locator =>
  scope.getByRole('gridcell', {
    name: new RegExp(`^row ${PLACES[row]}, column ${PLACES[column]}, place `),
  });

const tile = (scope: Scope, edge: 'bottom' | 'right', index: number): Locator => {
  const side = edge === 'bottom' ? 'below' : 'at the side';
  return scope.getByRole('gridcell', { name: new RegExp(`^number ${side}, ${PLACES[index]}:`) });
};

const productCell = (scope: Scope, place: number): Locator =>
  button(scope, new RegExp(`^product, ${PLACES[place]}:`));

/** An opened square may lie over the mat; it is shut before anything else is touched. */
const backToMat = async (scope: Scope): Promise<void> => {
  const shut = button(scope, 'Back to the mat');
  if (await shut.isVisible()) await shut.click();
};

const choose = async (scope: Scope, name: string): Promise<void> => {
  await backToMat(scope);
  const moves = scope.getByRole('navigation', { name: 'Where you are in the work' });
  const move = button(moves, name);
  if ((await move.getAttribute('aria-current')) !== 'step') await move.click();
};

const digits = async (keypad: Locator, written: string): Promise<void> => {
  for (const digit of written) await button(keypad, digit).click();
};

const press = async (choice: Locator): Promise<void> => {
  if ((await choice.getAttribute('aria-pressed')) !== 'true') await choice.click();
};

const openSquare = async (scope: Scope, at: readonly [number, number]): Promise<Locator> => {
  const opened = scope.getByRole('region', {
    name: `Square opened: ${PLACES[at[0] + at[1]]}, ${ROWS[at[0]]}`,
  });
  if (await opened.isVisible()) return opened;
  await choose(scope, 'Count');
  await square(scope, at).click();
  return opened;
};

type Do<N extends ChildAction['do']> = (
  scope: Scope,
  action: Extract<ChildAction, { do: N }>,
) => Promise<void>;

/** The number below is laid by keyboard, the one at the side by pointer: both are a child's ways. */
const layTile: Do<'layTile'> = async (scope, { edge, index, digit }) => {
  await choose(scope, 'Tiles');
  const place = tile(scope, edge, index);
  if (edge === 'bottom') return place.press(String(digit));
  await place.click();
  await digits(group(scope, 'Digits'), String(digit));
};

const layBars: Do<'layBars'> = async (scope, { square: at, kind, count }) => {
  await choose(scope, 'Lay');
  await press(button(group(scope, 'Bars'), `bar of ${kind}`));
  await press(button(group(scope, 'How many?'), String(count)));
  await square(scope, at).click();
};

const count: Do<'count'> = async (scope, { square: at, total }) => {
  const opened = await openSquare(scope, at);
  const place = opened.getByRole('heading').first();
  for (const digit of String(total)) await place.press(digit);
  await button(opened, 'That is it').click();
};

const exchange: Do<'exchange'> = async (scope, { from, ones }) => {
  const opened = await openSquare(scope, from);
  await button(opened, /^Exchange \d+ tens?$/).click();
  await digits(group(scope, 'How many do you lay there?'), String(ones));
};

const slide: Do<'slide'> = async (scope, { from, to }) => {
  await choose(scope, 'Slide');
  await square(scope, from).click();
  await square(scope, to).click();
};

const chooseRow = async (scope: Scope, row: number): Promise<void> => {
  await choose(scope, 'Row');
  await press(button(group(scope, 'Rows'), new RegExp(`^${ROWS[row]}`)));
};

const say: Do<'say'> = async (scope, { row, answer }) => {
  await chooseRow(scope, row);
  await digits(group(scope, 'This row makes'), answer);
  await button(scope, 'Say it').click();
};

const write: Do<'write'> = async (scope, { place, digit }) => {
  await choose(scope, 'Read');
  await productCell(scope, place).press(String(digit));
};

const finish: Do<'finish'> = async (scope, { what }) => {
  if (what === 'product' || what === 'problem') {
    await choose(scope, 'Read');
    return button(scope, what === 'product' ? 'The product is done' : 'I am finished').click();
  }
  await chooseRow(scope, Number(what.slice('row:'.length)));
  await button(scope, 'This row is done').click();
};

const WAYS: { [N in ChildAction['do']]: Do<N> } = {
  layTile,
  layBars,
  count,
  exchange,
  slide,
  say,
  write,
  finish,
  check: (scope) => button(scope, 'Check').click(),
  undo: (scope) => button(scope, 'Undo').click(),
};

/** Does one thing through the page, by the names that everybody's ears get, with clicks and keys. */
export const perform = (scope: Scope, action: ChildAction): Promise<void> =>
  (WAYS[action.do] as Do<ChildAction['do']>)(scope, action as never);

/** After "I am finished": to the next problem, or to one's own result. */
export const goOn = (scope: Scope): Promise<void> =>
  button(scope, /^(Next problem|See my work)$/).click();

/** Resolves when the page says that all is saved. */
export const untilSaved = (scope: Pick<Page, 'getByText'>): Promise<void> =>
  scope.getByText('Saved', { exact: true }).waitFor({ timeout: 60_000 });
