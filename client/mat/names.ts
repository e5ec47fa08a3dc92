import { placeWord, words } from '../words/words.ts';
import type { SquareView, TileView } from './view.ts';

/** "3 bars of 6, 1 bar of 4": a pile for ears, longest bars first. */
const pileWords = (bars: readonly number[]): string => {
  const parts: string[] = [];
  for (let kind = 10; kind >= 1; kind -= 1) {
    const count = bars[kind - 1] ?? 0;
    if (count > 0) parts.push(words('someBars', { count, kind }));
  }
  return parts.join(', ');
};

const makes = (bars: readonly number[]): number =>
  bars.reduce((sum, count, i) => sum + count * (i + 1), 0);

/** The name of a square: row and column by their places, the place they make, and the pile. */
export const squareName = (
  places: { readonly row: number; readonly column: number },
  state: SquareView,
): string => {
  const total = makes(state.bars);
  const pile =
    total === 0 ? words('squareEmpty') : words('pileMakes', { bars: pileWords(state.bars), total });
  const name = words('squareName', {
    row: placeWord(places.row),
    column: placeWord(places.column),
    place: placeWord(places.row + places.column),
    pile,
  });
  return state.again ? `${name}, ${words('again')}` : name;
};

export const tileName = (edge: 'bottom' | 'right', state: TileView): string => {
  const name = words(edge === 'bottom' ? 'tileBelow' : 'tileBeside', {
    place: placeWord(state.place),
    digit: state.digit ?? words('noTile'),
  });
  return state.again ? `${name}, ${words('again')}` : name;
};
