import { html, nothing, type TemplateResult } from 'lit';
import { words } from '../words/words.ts';
import type { DeskController } from './desk.ts';
import type { Source } from './drag.ts';
import { TOOL_WORDS, type Tool, toolsOf } from './moves.ts';
import '../mat/bar.ts';

/** The moves along the bottom: where one is, and what may come next; any can be chosen at any time. */
export const movesOf = (at: DeskController): TemplateResult => {
  const chip = (tool: Tool) => html`<button
    data-tool=${tool}
    class=${at.nextTool === tool && at.desk.tool !== tool ? 'next' : ''}
    aria-current=${at.desk.tool === tool ? 'step' : nothing}
    @click=${() => at.choose(tool)}
  >${words(TOOL_WORDS[tool])}</button>`;
  return html`<nav aria-label=${words('moves')}>${toolsOf(at.work.problem.stage).map(chip)}</nav>`;
};

const kindsOf = (at: DeskController, dragged: Source): number[] => {
  if (dragged.what === 'bar') return Array(at.desk.howMany).fill(dragged.kind);
  if (dragged.what === 'pick') return [dragged.kind];
  if (dragged.what === 'digit') return [];
  return pileKinds(at, dragged.row, dragged.column).slice(0, 9);
};

/** The bars of a pile one by one. */
export const pileKinds = (at: DeskController, row: number, column: number): number[] => {
  const bars = at.work.position.piles[row]?.[column]?.bars ?? [];
  return bars.flatMap((count, i) => Array<number>(count).fill(i + 1)).reverse();
};

/** What follows the finger. */
export const ghostOf = (at: DeskController, dragged: Source): TemplateResult =>
  dragged.what === 'digit'
    ? html`<div class="ghost tile">${dragged.digit}</div>`
    : html`<div class="ghost">${kindsOf(at, dragged).map((kind) => html`<pw-bar .kind=${kind} .bead=${14}></pw-bar>`)}</div>`;
