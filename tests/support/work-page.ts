import type { ChildPage, Thing } from './child-page.ts';
import type { ChildAction } from './child-work.ts';

/** The child's page: a whole page, a frame of one or a part of it. What is found is a thing of the same browser. */
export type Scope<T extends Thing = Thing> = {
  getByRole(...what: Parameters<ChildPage['getByRole']>): T;
};
type Square = readonly [row: number, column: number];

/** What a page of work can be made to do: a child's work, and making a ten from picked bars. */
export type PageAction =
  | ChildAction
  | { do: 'makeTen'; square: [number, number]; bars: number[]; exchange?: boolean };

/** How things are pressed, and carried from one place to another; `carry` null: by pressing one after the other. */
export interface Hand {
  readonly hit: (target: Thing) => Promise<void>;
  readonly carry: ((what: Thing, to: Thing) => Promise<void>) | null;
}

export const MOUSE: Hand = {
  hit: (target) => target.click(),
  carry: (what, to) => what.dragTo(to),
};

export const TOUCH: Hand = { hit: (target) => target.tap(), carry: null };

export const PLACES = [
  'units',
  'tens',
  'hundreds',
  'thousands',
  'ten thousands',
  'hundred thousands',
  'millions',
  'ten millions',
  'hundred millions',
  'billions',
  'ten billions',
  'hundred billions',
];
export const ROWS = ['first row', 'second row', 'third row', 'fourth row'];

export const button = <T extends Thing>(scope: Scope<T>, name: string | RegExp): T =>
  scope.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });

export const group = <T extends Thing>(scope: Scope<T>, name: string): T =>
  scope.getByRole('group', { name, exact: true });

export const square = <T extends Thing>(scope: Scope<T>, [row, column]: Square): T =>
  scope.getByRole('gridcell', {
    name: new RegExp(`^row ${PLACES[row]}, column ${PLACES[column]},`),
  });

export const tile = <T extends Thing>(
  scope: Scope<T>,
  edge: 'bottom' | 'right',
  index: number,
): T => {
  const side = edge === 'bottom' ? 'below' : 'at the side';
  return scope.getByRole('gridcell', { name: new RegExp(`^number ${side}, ${PLACES[index]}:`) });
};

export const productCell = <T extends Thing>(scope: Scope<T>, place: number): T =>
  button(scope, new RegExp(`^product, ${PLACES[place]}:`));

/** An opened square may lie over the mat; it is shut before anything else is touched. */
const backToMat = async (scope: Scope, { hit }: Hand): Promise<void> => {
  const shut = button(scope, 'Back to the mat');
  if (await shut.isVisible()) await hit(shut);
};

export const choose = async (scope: Scope, name: string, hand: Hand): Promise<void> => {
  await backToMat(scope, hand);
  const moves = scope.getByRole('navigation', { name: 'Where you are in the work' });
  const move = button(moves, name);
  // A stage of one move offers no choice.
  if ((await move.count()) === 0) return;
  if ((await move.getAttribute('aria-current')) !== 'step') await hand.hit(move);
};

export const digits = async (keypad: Thing, written: string, { hit }: Hand): Promise<void> => {
  for (const digit of written) await hit(button(keypad, digit));
};

export const press = async (choice: Thing, { hit }: Hand): Promise<void> => {
  if ((await choice.getAttribute('aria-pressed')) !== 'true') await hit(choice);
};

export const openedSquare = <T extends Thing>(scope: Scope<T>, [row, column]: Square): T =>
  scope.getByRole('region', {
    name: `Square opened: ${PLACES[row + column]}, ${ROWS[row]}`,
  });

export const openSquare = async <T extends Thing>(
  scope: Scope<T>,
  at: Square,
  hand = MOUSE,
): Promise<T> => {
  const opened = openedSquare(scope, at);
  if (await opened.isVisible()) return opened;
  await choose(scope, 'Count', hand);
  await hand.hit(square(scope, at));
  return opened;
};

type Do<N extends PageAction['do']> = (
  scope: Scope,
  action: Extract<PageAction, { do: N }>,
  hand: Hand,
) => Promise<void>;

const layTile: Do<'layTile'> = async (scope, { edge, index, digit }, hand) => {
  await choose(scope, 'Tiles', hand);
  const place = tile(scope, edge, index);
  const keypad = group(scope, 'Digits');
  if (hand.carry !== null) return hand.carry(button(keypad, String(digit)), place);
  await hand.hit(place);
  await digits(keypad, String(digit), hand);
};

const layBars: Do<'layBars'> = async (scope, { square: at, kind, count }, hand) => {
  await choose(scope, 'Lay', hand);
  await press(button(group(scope, 'How many?'), String(count)), hand);
  const bar = button(group(scope, 'Bars'), `bar of ${kind}`);
  if (hand.carry !== null) return hand.carry(bar, square(scope, at));
  await press(bar, hand);
  await hand.hit(square(scope, at));
};

const count: Do<'count'> = async (scope, { square: at, total }, hand) => {
  const opened = await openSquare(scope, at, hand);
  await digits(group(opened, 'The pile makes'), String(total), hand);
  await hand.hit(button(opened, 'That is it'));
};

const makeTen: Do<'makeTen'> = async (scope, { square: at, bars, exchange }, hand) => {
  const opened = await openSquare(scope, at, hand);
  for (const kind of bars)
    await hand.hit(
      opened.getByRole('button', { name: new RegExp(`^bar of ${kind},`), pressed: false }).first(),
    );
  await hand.hit(
    button(opened, exchange ? 'Make a ten and exchange' : /^Make a ten(?! and exchange)/),
  );
};

const exchange: Do<'exchange'> = async (scope, { from, to, ones }, hand) => {
  const opened = await openSquare(scope, from, hand);
  if (to[0] !== from[0] || to[1] !== from[1] + 1) {
    await hand.hit(button(opened, 'To another square'));
    await hand.hit(square(scope, to));
    return digits(group(scope, 'How many do you lay there?'), String(ones), hand);
  }
  await hand.hit(button(opened, /^Exchange \d+ tens?$/));
  await digits(group(opened, 'How many do you lay there?'), String(ones), hand);
};

const slide: Do<'slide'> = async (scope, { from, to }, hand) => {
  await choose(scope, 'Slide', hand);
  if (hand.carry !== null) return hand.carry(square(scope, from), square(scope, to));
  await hand.hit(square(scope, from));
  await hand.hit(square(scope, to));
};

const chooseRow = async (scope: Scope, row: number, hand: Hand): Promise<void> => {
  await choose(scope, 'Row', hand);
  await press(button(group(scope, 'Rows'), new RegExp(`^${ROWS[row]}`)), hand);
};

const say: Do<'say'> = async (scope, { row, answer }, hand) => {
  await chooseRow(scope, row, hand);
  await digits(group(scope, 'This row makes'), answer, hand);
  await hand.hit(button(scope, 'Say it'));
};

const write: Do<'write'> = async (scope, { place, digit }, hand) => {
  await choose(scope, 'Read', hand);
  await press(productCell(scope, place), hand);
  await digits(group(scope, 'Digits'), String(digit), hand);
};

const finish: Do<'finish'> = async (scope, { what }, hand) => {
  if (what === 'product' || what === 'problem') {
    await choose(scope, 'Read', hand);
    const name =
      what === 'product' ? 'The product is done' : /^(I am finished|Leave it like this)$/;
    return hand.hit(button(scope, name));
  }
  await chooseRow(scope, Number(what.slice('row:'.length)), hand);
  await hand.hit(button(scope, 'This row is done'));
};

const WAYS: { [N in PageAction['do']]: Do<N> } = {
  layTile,
  layBars,
  count,
  makeTen,
  exchange,
  slide,
  say,
  write,
  finish,
  check: (scope, _action, hand) => hand.hit(button(scope, 'Check')),
  undo: (scope, _action, hand) => hand.hit(button(scope, 'Undo')),
};

/** Does one thing through the page by one hand, by the names that everybody's ears get. */
export const perform = (scope: Scope, action: PageAction, hand: Hand = MOUSE): Promise<void> =>
  (WAYS[action.do] as Do<PageAction['do']>)(scope, action as never, hand);

/** After "I am finished": to the next problem, or to one's own result. */
export const goOn = (scope: Scope, { hit }: Hand = MOUSE): Promise<void> =>
  hit(button(scope, /^(Next problem|See my work)$/));

/** Resolves when the page says that all is saved. */
export const untilSaved = (scope: Pick<ChildPage, 'getByText'>): Promise<void> =>
  scope.getByText('Saved', { exact: true }).waitFor({ timeout: 60_000 });
