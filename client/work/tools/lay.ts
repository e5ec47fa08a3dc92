import { html, type TemplateResult } from 'lit';
import type { Square } from '../../../engine/child.ts';
import { beads, box, picture, way } from '../pictures.ts';
import { openSquare } from '../presses.ts';
import { sentence } from '../says.ts';
import type { At, Tool } from '../tool.ts';
import '../../mat/tray.ts';

const layPicture = picture([
  box(96, 34, 36),
  ...beads(16, 14, 4, 12),
  ...beads(103, 48, 4, 7),
  ...beads(103, 58, 4, 7),
  way('M62 20 88 38M76 38h12v-11'),
]);

/** The bar goes into the hand, or back. */
export const pickBar = (at: At, kind: number): void => {
  const { held } = at.desk;
  const again = held?.what === 'bars' && held.kind === kind;
  at.set({ held: again ? null : { what: 'bars', kind }, message: null });
};

const tray = (at: At): TemplateResult => html`<pw-tray
  .kind=${at.desk.held?.what === 'bars' ? at.desk.held.kind : null}
  .count=${at.desk.howMany}
  @kind=${(event: CustomEvent<number>) => pickBar(at, event.detail)}
  @how-many=${(event: CustomEvent<number>) => at.set({ howMany: event.detail })}
></pw-tray>`;

const layBars = (at: At, square: Square, kind: number): void => {
  at.do({ do: 'layBars', square, kind, count: at.desk.howMany });
};

export const lay: Tool = {
  id: 'lay',
  word: 'moveLay',
  ask: 'askLay',
  picture: layPicture,
  says: (_at, _next, row) => sentence('nextLay', { row }),
  tray,
  press: (at, cell) => {
    const { held } = at.desk;
    if (cell.at !== 'square') return;
    const square: Square = [cell.row, cell.column];
    if (held?.what === 'bars') layBars(at, square, held.kind);
    else openSquare(at, square);
  },
  drop: (at, source, cell) => {
    if (source.what === 'bar' && cell.at === 'square')
      layBars(at, [cell.row, cell.column], source.kind);
  },
  key: (at, cell, key) => {
    if (cell.at !== 'square' || !/^[1-9]$/.test(key)) return 'unused';
    layBars(at, [cell.row, cell.column], Number(key));
    return 'used';
  },
};
