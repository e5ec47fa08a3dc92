import { html, nothing, type TemplateResult } from 'lit';
import { barsOf } from '../mat/pile-layout.ts';
import { words } from '../words/words.ts';
import type { Source } from './drag.ts';
import type { At, Tool } from './tool.ts';
import '../mat/bar.ts';

/** The moves along the bottom: where one is, and what may come next; any can be chosen at any time. */
export const movesOf = (at: At): TemplateResult => {
  const { tools, tool, nextTool } = at;
  if (tools.length < 2) return html``;
  const chip = ({ id, word }: Tool) => html`<button
    data-tool=${id}
    class=${nextTool?.id === id && tool.id !== id ? 'next' : ''}
    aria-current=${tool.id === id ? 'step' : nothing}
    @click=${() => at.choose(id)}
  >${words(word)}</button>`;
  return html`<nav class=${tools.length > 6 ? 'many' : ''} aria-label=${words('moves')}>${tools.map(chip)}</nav>`;
};

const kindsOf = (at: At, dragged: Source): number[] => {
  if (dragged.what === 'bar') return Array(at.desk.howMany).fill(dragged.kind);
  if (dragged.what === 'pick') return [dragged.kind];
  if (dragged.what === 'digit') return [];
  return pileKinds(at, dragged.row, dragged.column).slice(0, 9);
};

/** The bars of a pile one by one. */
export const pileKinds = (at: At, row: number, column: number): number[] =>
  barsOf(at.work.position.piles[row]?.[column]?.bars ?? []);

/** What follows the finger. */
export const ghostOf = (at: At, dragged: Source): TemplateResult =>
  dragged.what === 'digit'
    ? html`<div class="ghost tile">${dragged.digit}</div>`
    : html`<div class="ghost">${kindsOf(at, dragged).map((kind) => html`<pw-bar .kind=${kind} .bead=${14}></pw-bar>`)}</div>`;
