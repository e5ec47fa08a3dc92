import { html, type TemplateResult } from 'lit';
import type { Problem } from '../../engine/child.ts';
import { presentWords } from '../words/class-present-words.ts';
import { anotherLike } from './another.ts';
import '../present/player.ts';

/** Another problem of the same shape, worked move by move while the child looks on; `back` leads to the child's own work. */
export const seeWorked = (problem: Problem, back: () => void): TemplateResult => html`<pw-player
  .problem=${anotherLike(problem)}
  .intro=${presentWords('oneLikeYours')}
><button data-do="backToWork" @click=${back}>${presentWords('backToOwn')}</button></pw-player>`;
