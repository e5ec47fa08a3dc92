import { html, nothing, svg, type TemplateResult } from 'lit';
import type { Prompt } from '../../../engine/child.ts';
import type { Cell } from '../../mat/cells.ts';
import { placeWord, placeWorth, words } from '../../words/words.ts';
import { box, line, picture, way } from '../pictures.ts';
import { type Sentence, sentence } from '../says.ts';
import { answers } from '../told.ts';
import type { At, Tool } from '../tool.ts';
import { finishButton, pad, typedText } from './parts.ts';

const tellPicture = picture([
  ...line(12, 40, '34', 22),
  way('M64 51h20M76 45l9 6-9 6'),
  svg`<text x="116" y="58" class="large">34</text>`,
]);

const walkPicture = picture([
  ...[28, 64].map((x) => box(x, 2, 30, 'other')),
  box(28, 36, 30),
  box(64, 36, 30, 'other'),
  way('M43 74V52M112 51H62'),
  svg`<text x="122" y="56">1</text>`,
]);

const LONGEST = 16;

const promptNow = ({ work, desk }: At): Prompt => work.problem.prompts[desk.prompt]!;
const given = ({ work }: At, i: number) => work.position.said.prompts[i];
const asksSquare = ({ ask }: Prompt): boolean => ask === 'square' || ask === 'category';

const go = (at: At, prompt: number): void =>
  at.set({ prompt, answer: '', message: null, hint: null });

const say = (at: At): void => {
  const { prompt, answer } = at.desk;
  if (answer !== '' && at.do({ do: 'say', prompt, answer: answer.replace(/\.$/, '') }))
    at.set({ answer: '' });
};

const type = (at: At, digit: number): void => {
  if (!asksSquare(promptNow(at)))
    at.set({ answer: `${at.desk.answer}${digit}`.slice(0, LONGEST), message: null });
};

const rub = (at: At): void => at.set({ answer: at.desk.answer.slice(0, -1) });

const point = (at: At): void => {
  const { answer } = at.desk;
  if (!answer.includes('.')) at.set({ answer: `${answer || '0'}.` });
};

/** A square pressed is the answer, where a square is asked for; another press changes it. */
const press = (at: At, cell: Cell): void => {
  if (!asksSquare(promptNow(at))) at.set({ message: sentence('typeAnswer') });
  else if (cell.at === 'square')
    at.do({ do: 'say', prompt: at.desk.prompt, answer: [cell.row, cell.column] });
};

/** The mat is asked first where it answers; what it has nothing against is finished. */
const finish = (at: At): void => {
  if (answers(at.work) && at.do({ do: 'check' }) && at.work.lifted.length > 0) return;
  at.do({ do: 'finish', what: 'problem' });
};

const onward = (at: At): TemplateResult | typeof nothing => {
  const { prompts } = at.work.problem;
  const open = prompts.findIndex((_, i) => i !== at.desk.prompt && given(at, i) === undefined);
  if (given(at, at.desk.prompt) === undefined) return nothing;
  if (open >= 0)
    return html`<button class="primary" data-do="nextQuestion" @click=${() => go(at, open)}>${words('nextQuestion')}</button>`;
  const lifted = at.work.lifted.length > 0;
  return html`${lifted ? finishButton(at, 'problem', 'leaveIt', '') : nothing}<button class="primary" data-do="finishAll" @click=${() => finish(at)}>${words('problemDone')}</button>`;
};

const chip = (at: At, i: number): TemplateResult => {
  const again = at.work.lifted.some(({ prompt }) => prompt === i);
  const answered = given(at, i) !== undefined;
  const state = again ? `, ${words('again')}` : answered ? `, ${words('answered')}` : '';
  return html`<button
    class=${again ? 'again' : ''}
    aria-pressed=${at.desk.prompt === i}
    aria-label=${`${words('question', { at: i + 1 })}${state}`}
    @click=${() => go(at, i)}
  >${i + 1}${answered && !again ? ' ✓' : ''}</button>`;
};

const typed = (at: At): TemplateResult => {
  const { answer, prompt } = at.desk;
  return html`<output class="answer" aria-label=${words('answer')}>${typedText(answer, given(at, prompt))}</output>
    <button data-do="say" ?disabled=${answer === ''} @click=${() => say(at)}>${words('say')}</button>`;
};

const tray = (at: At): TemplateResult => {
  const square = asksSquare(promptNow(at));
  return html`<div class="line">
      <div class="chips" role="group" aria-label=${words('questions')}>${at.work.problem.prompts.map((_, i) => chip(at, i))}</div>
      <span class="grow"></span>
      ${square ? nothing : typed(at)}${onward(at)}
    </div>
    ${square ? nothing : pad(at, words('answer'), promptNow(at).ask === 'number')}`;
};

const asked = (at: At): Sentence => {
  const prompt = promptNow(at);
  switch (prompt.ask) {
    case 'worth':
      return sentence('askWorth');
    case 'square':
      return sentence('askSquare', { worth: placeWorth(prompt.place) });
    case 'category': {
      const [across, up] = prompt.places;
      return sentence('askCategory', { across: placeWord(across), up: placeWord(up) });
    }
    case 'number':
      return sentence(prompt.of === 'multiplicand' ? 'askNumberBelow' : 'askNumberBeside');
  }
};

/** Questions about squares and places. */
export const walk: Tool = {
  id: 'walk',
  word: 'moveWalk',
  ask: 'askWalk',
  picture: walkPicture,
  says: asked,
  tray,
  press,
  digit: type,
  point,
  rub,
  key: (at, _cell, key) => {
    if (asksSquare(promptNow(at))) return 'unused';
    if (/^\d$/.test(key)) type(at, Number(key));
    else if (key === '.' || key === ',') point(at);
    else if (key === 'Enter' && at.desk.answer !== '') say(at);
    else if (key === 'Backspace' || key === 'Delete') rub(at);
    else return 'unused';
    return 'used';
  },
};

/** The numbers read back from their tiles. */
export const tell: Tool = {
  ...walk,
  id: 'tell',
  word: 'moveTell',
  ask: 'askTell',
  picture: tellPicture,
};
