import { html, nothing } from 'lit';
import { type Problem, parseProblem } from '../../engine/child.ts';
import type { Given } from '../problems/address.ts';
import { readTyped, signsOf } from '../problems/typed.ts';
import { printWords } from '../words/class-print-words.ts';
import { numberLocale } from '../words/locale.ts';

export type Source = 'activity' | 'typed';

interface Read {
  readonly problems: readonly Problem[];
  /** What could not be used, a sentence a line. */
  readonly faults: readonly string[];
}

/** What was typed, as far as it is clear and a mat holds it. */
export const readProblems = (text: string): Read => {
  const problems: Problem[] = [];
  const faults: string[] = [];
  for (const { line, text: typed, pair } of readTyped(text, signsOf(numberLocale))) {
    const parsed = pair === null ? null : parseProblem({ stage: 'paper', ...pair });
    if (parsed?.ok) problems.push(parsed.value);
    else if (parsed === null) faults.push(printWords('lineUnread', { line, text: typed }));
    else faults.push(printWords('lineTooLarge', { line }));
  }
  return { problems, faults };
};

interface Shown {
  readonly given: Given;
  readonly source: Source;
  readonly typed: string;
}

const sourceChoice = ({ given, source }: Shown, choose: (source: Source) => void) => {
  const option = (value: Source, text: string) =>
    html`<label><input type="radio" name="source" value=${value} .checked=${source === value} @change=${() => choose(value)} />${text}</label>`;
  const { title, problems } = given;
  return html`${option('activity', printWords('fromActivity', { title, count: problems.length }))}${option('typed', printWords('typedOwn'))}`;
};

/** Whose problems go on cards and answer keys. */
export const problemForm = (
  shown: Shown,
  choose: (source: Source) => void,
  type: (text: string) => void,
) => {
  const typing = shown.source === 'typed';
  const faults = typing ? readProblems(shown.typed).faults : [];
  const area = html`<label class="typed">${printWords('typeHere')}<textarea
      name="problems"
      rows="5"
      dir="ltr"
      spellcheck="false"
      aria-describedby="faults"
      .value=${shown.typed}
      @input=${(event: Event) => type((event.target as HTMLTextAreaElement).value)}
    ></textarea></label>
    <div id="faults" role="status">${faults.map((fault) => html`<p class="fault">${fault}</p>`)}${typing && shown.typed.trim() === '' ? html`<p>${printWords('noProblems')}</p>` : nothing}</div>`;
  return html`<fieldset>
    <legend>${printWords('whichProblems')}</legend>
    ${shown.given.problems.length > 0 ? sourceChoice(shown, choose) : nothing}
    ${typing ? area : nothing}
  </fieldset>`;
};
