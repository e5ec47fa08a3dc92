import { placeWord, words } from '../words/words.ts';
import type { SquareView, TileView } from './view.ts';

/** "3 bars of 6, 1 bar of 4": a pile for ears, longest bars first. */
export const pileWords = (bars: readonly number[]): string => {
  const parts: string[] = [];
  for (let kind = 10; kind >= 1; kind -= 1) {
    const count = bars[kind - 1] ?? 0;
    if (count > 0) parts.push(words('someBars', { count, kind }));
  }
  return parts.join(', ');
};

const makes = (bars: readonly number[]): number =>
  bars.reduce((sum, count, i) => sum + count * (i + 1), 0);

const contentWords = ({ bars, figures }: SquareView): string => {
  const total = makes(bars);
  const parts = total === 0 ? [] : [words('pileMakes', { bars: pileWords(bars), total })];
  if (figures?.fromRight != null) parts.push(words('inUpper', { digit: figures.fromRight }));
  if (figures?.own != null) parts.push(words('inLower', { digit: figures.own }));
  return parts.length === 0 ? words('squareEmpty') : parts.join(', ');
};

/** A name with what a seeing child sees at once: a hint's mark, and that it is to be looked at again. */
export const named = (
  name: string,
  { marked, again }: { readonly marked: boolean; readonly again: boolean },
): string =>
  [name, ...(marked ? [words('marked')] : []), ...(again ? [words('again')] : [])].join(', ');

/** The name of a square: row and column by their places, the place they make where it may be told, and what lies there. */
export const squareName = (
  places: { readonly row: number; readonly column: number },
  state: SquareView,
  { tellsPlace, asked }: { readonly tellsPlace: boolean; readonly asked: boolean },
): string => {
  const name = words(tellsPlace ? 'squareName' : 'squareAsked', {
    row: placeWord(places.row),
    column: placeWord(places.column),
    place: placeWord(places.row + places.column),
    pile: contentWords(state),
  });
  return named(asked ? `${name}, ${words('asked')}` : name, state);
};

export const tileName = (edge: 'bottom' | 'right', state: TileView): string => {
  const name = words(edge === 'bottom' ? 'tileBelow' : 'tileBeside', {
    place: placeWord(state.place),
    digit: state.digit ?? words('noTile'),
  });
  return named(name, state);
};
