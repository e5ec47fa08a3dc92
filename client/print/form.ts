import { html, nothing, type TemplateResult } from 'lit';
import { type PrintWordId, printWords } from '../words/class-print-words.ts';
import { type Choice, KINDS, type Kind, RULINGS, SIDES, type Side } from './choice.ts';
import { beadOf, planMat } from './mat-plan.ts';

/** Changes a choice; the form knows nothing else of the page. */
export type Choose = (change: Partial<Choice>) => void;

const KIND_WORDS: Record<Kind, PrintWordId> = {
  mat: 'kindMat',
  tiles: 'kindTiles',
  bars: 'kindBars',
  cards: 'kindCards',
  answers: 'kindAnswers',
  squared: 'kindSquared',
  help: 'kindHelp',
};

const checkbox = (
  name: string,
  word: PrintWordId,
  checked: boolean,
  change: (on: boolean) => void,
) => html`<label><input
  type="checkbox"
  name=${name}
  .checked=${checked}
  @change=${(event: Event) => change((event.target as HTMLInputElement).checked)}
/>${printWords(word)}</label>`;

/** One of a few, as radio buttons in a row. */
const oneOf = <T extends string>(
  name: string,
  word: PrintWordId,
  values: readonly T[],
  chosen: T,
  change: (value: T) => void,
) => html`<div class="line" role="radiogroup" aria-label=${printWords(word)}>
  <span>${printWords(word)}</span>
  ${values.map(
    (value) =>
      html`<label><input type="radio" name=${name} value=${value} .checked=${value === chosen} @change=${() => change(value)} />${printWords(value as PrintWordId)}</label>`,
  )}
</div>`;

const number = (
  name: string,
  word: PrintWordId,
  value: number,
  [least, most]: readonly [number, number],
  change: (value: number) => void,
) => {
  const changed = (event: Event) => {
    const input = event.target as HTMLInputElement;
    const wanted = Math.round(Number(input.value));
    if (Number.isFinite(wanted) && wanted >= least && wanted <= most) change(wanted);
    else if (event.type === 'change') input.value = String(value);
  };
  return html`<label class="line"><span>${printWords(word)}</span><input
    type="number"
    name=${name}
    min=${least}
    max=${most}
    .value=${String(value)}
    @input=${changed}
    @change=${changed}
  /></label>`;
};

const menu = <T extends string | number>(
  name: string,
  word: PrintWordId,
  values: readonly T[],
  chosen: T,
  say: (value: T) => string,
  change: (value: T) => void,
) => html`<label class="line"><span>${printWords(word)}</span><select
  name=${name}
  @change=${(event: Event) => change(values[(event.target as HTMLSelectElement).selectedIndex] as T)}
>${values.map((value) => html`<option .selected=${value === chosen}>${say(value)}</option>`)}</select></label>`;

const mm = (length: number): string => printWords('mm', { length });
const sideWords = (side: Side): string => (side === 'whole' ? printWords('sideWhole') : mm(side));

const kinds = ({ kinds: chosen }: Choice, choose: Choose) => html`<fieldset>
  <legend>${printWords('what')}</legend>
  ${KINDS.map((kind) =>
    checkbox(kind, KIND_WORDS[kind], chosen.includes(kind), (on) =>
      choose({ kinds: KINDS.filter((each) => (each === kind ? on : chosen.includes(each))) }),
    ),
  )}
</fieldset>`;

const paper = (choice: Choice, choose: Choose) => html`<fieldset>
  <legend>${printWords('how')}</legend>
  ${oneOf('paper', 'paper', ['a4', 'letter'], choice.paper, (value) => choose({ paper: value }))}
  ${oneOf('inks', 'inks', ['colour', 'saving'], choice.inks, (value) => choose({ inks: value }))}
</fieldset>`;

/** Beads smaller than this cannot be picked up, in mm. */
const LEAST_BEAD = 3;

const smallness = (choice: Choice) => {
  const bead = beadOf(planMat(choice, choice.side, choice.paper).side);
  const small = choice.kinds.includes('bars') && bead < LEAST_BEAD;
  return html`<p role="status" class="fault">${small ? printWords('tooSmall', { bead }) : nothing}</p>`;
};

const mat = (choice: Choice, choose: Choose) => html`<fieldset>
  <legend>${printWords('matSize')}</legend>
  ${number('rows', 'rows', choice.rows, [1, 6], (rows) => choose({ rows }))}
  ${number('columns', 'columns', choice.columns, [2, 13], (columns) => choose({ columns }))}
  ${number('decimals', 'decimals', choice.decimals, [0, 9], (decimals) => choose({ decimals }))}
  ${menu('side', 'side', SIDES, choice.side, sideWords, (side) => choose({ side }))}
  ${smallness(choice)}
</fieldset>`;

const amounts = (choice: Choice, choose: Choose) => html`<fieldset>
  <legend>${printWords('amounts')}</legend>
  ${choice.kinds.includes('tiles') ? number('tileSets', 'tileSets', choice.tileSets, [1, 9], (tileSets) => choose({ tileSets })) : nothing}
  ${
    choice.kinds.includes('bars')
      ? html`${number('barSets', 'barSets', choice.barSets, [1, 40], (barSets) => choose({ barSets }))}
          ${checkbox('numbers', 'numbersOnBars', choice.numbers, (numbers) => choose({ numbers }))}`
      : nothing
  }
</fieldset>`;

/** What is chosen decides what is asked: nothing is shown that would change nothing. */
export const formOf = (
  choice: Choice,
  choose: Choose,
  problems: TemplateResult,
): TemplateResult => {
  const has = (...some: readonly Kind[]) => some.some((kind) => choice.kinds.includes(kind));
  return html`${kinds(choice, choose)}${paper(choice, choose)}
    ${has('mat', 'tiles', 'bars') ? mat(choice, choose) : nothing}
    ${has('tiles', 'bars') ? amounts(choice, choose) : nothing}
    ${has('squared') ? html`<fieldset><legend>${printWords('kindSquared')}</legend>${menu('ruling', 'ruling', RULINGS, choice.ruling, mm, (ruling) => choose({ ruling }))}</fieldset>` : nothing}
    ${has('cards', 'answers') ? problems : nothing}`;
};
