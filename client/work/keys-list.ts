import { html, type TemplateResult } from 'lit';
import '../words/help-words.ts';
import { type WordId, words } from '../words/words.ts';

const KEYS: readonly (readonly [WordId, WordId])[] = [
  ['keysWalk', 'keysWalkDoes'],
  ['keysEnter', 'keysEnterDoes'],
  ['keysSpace', 'keysSpaceDoes'],
  ['keysDigit', 'keysDigitDoes'],
  ['keysMore', 'keysMoreDoes'],
  ['keysCarry', 'keysCarryDoes'],
  ['keysBack', 'keysBackDoes'],
  ['keysPage', 'keysPageDoes'],
  ['keysUndo', 'keysUndoDoes'],
  ['keysEscape', 'keysEscapeDoes'],
];

/** The keys of the work page, in a dialog of its own. */
export const keysList = (): TemplateResult => html`<dialog id="keys" aria-labelledby="keys-title">
  <h2 id="keys-title">${words('keysTitle')}</h2>
  <dl>${KEYS.map(([key, does]) => html`<dt>${words(key)}</dt><dd>${words(does)}</dd>`)}</dl>
  <form method="dialog"><button class="primary">${words('close')}</button></form>
</dialog>`;
