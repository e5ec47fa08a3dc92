import type { Action, Square, Stage } from '../../engine/index.ts';
import {
  button,
  choose,
  digits,
  group,
  type Hand,
  MOUSE,
  type PageAction,
  PLACES,
  perform,
  press,
  ROWS,
  type Scope,
  square,
} from './work-page.ts';

type Named<N extends Action['do']> = Extract<Action, { do: N }>;
type LineWrite = Extract<Action, { do: 'write' | 'rub'; line: unknown }>;

/** Everything that a child can do at any stage, done through the page by one hand, by the names that everybody's ears get. */
export class StagePage {
  private readonly scope: Scope;
  private readonly hand: Hand;
  private readonly stage: Stage;
  /** Multiplier rows by the line that was begun for them. */
  private readonly rows = new Map<string, number>();

  constructor(scope: Scope, stage: Stage, hand: Hand = MOUSE) {
    this.scope = scope;
    this.stage = stage;
    this.hand = hand;
  }

  async do(action: Action): Promise<void> {
    switch (action.do) {
      case 'layBars':
        return action.of === undefined ? this.plain(action) : this.layFact(action, action.of);
      case 'say':
        return 'prompt' in action ? this.answer(action) : this.plain(action);
      case 'begin':
        this.rows.set(action.line, action.row);
        return this.touchRow(action.row);
      case 'write':
        return 'square' in action ? this.writeSquare(action) : this.writeLine(action, action.digit);
      case 'rub':
        return 'square' in action ? this.rubSquare(action) : this.writeLine(action, null);
      case 'finish':
        return this.finish(action);
      case 'hint':
        return this.hand.hit(button(this.scope, 'Help me'));
      default:
        return this.plain(action);
    }
  }

  private plain(action: Action): Promise<void> {
    return perform(this.scope, action as PageAction, this.hand);
  }

  private async layFact({ square: at, kind }: Named<'layBars'>, of: Square): Promise<void> {
    const { scope, hand } = this;
    await choose(scope, 'Lay', hand);
    await hand.hit(square(scope, of));
    const bar = button(group(scope, 'Bars'), `bar of ${kind}`);
    if (hand.carry !== null) return hand.carry(bar, square(scope, at));
    await press(bar, hand);
    await hand.hit(square(scope, at));
  }

  private async answer({ prompt, answer }: Extract<Action, { prompt: number }>): Promise<void> {
    const { scope, hand } = this;
    await choose(scope, 'Read back', hand);
    const question = new RegExp(`^Question ${prompt + 1}(,|$)`);
    await press(button(group(scope, 'Questions'), question), hand);
    if (typeof answer !== 'string') return hand.hit(square(scope, answer));
    await digits(group(scope, 'Your answer'), answer, hand);
    await hand.hit(button(scope, 'Say it'));
  }

  private async touchRow(row: number): Promise<void> {
    await choose(this.scope, 'Rows', this.hand);
    await this.hand.hit(group(this.scope, 'Rows').getByRole('button').nth(row));
  }

  private async writeLine({ line, place }: LineWrite, digit: number | null): Promise<void> {
    const { scope, hand } = this;
    const small = line.startsWith('carry');
    const row = this.rows.get(line.replace('carry', 'partial'));
    const name = row === undefined ? 'product' : ROWS[row];
    const cell = button(scope, new RegExp(`^${name}, ${PLACES[place]}:`));
    const keypad = group(scope, 'Digits');
    await this.toLine(row);
    await press(cell, hand);
    if (small) await press(button(keypad, 'Carry'), hand);
    await hand.hit(button(keypad, digit === null ? 'Rub out' : String(digit)));
  }

  private async toLine(row: number | undefined): Promise<void> {
    const adds = this.stage === 'cells' || this.stage === 'paper';
    await choose(this.scope, row === undefined ? (adds ? 'Add' : 'Read') : 'Rows', this.hand);
  }

  private async penTo(at: Square, slot: 'own' | 'fromRight'): Promise<void> {
    const { scope, hand } = this;
    await choose(scope, 'Facts', hand);
    await hand.hit(square(scope, at));
    const corner = slot === 'own' ? 'Lower corner' : 'Upper corner';
    await press(button(group(scope, 'Corner'), corner), hand);
  }

  private async writeSquare(action: Extract<Action, { do: 'write'; square: unknown }>) {
    await this.penTo(action.square, action.slot);
    await digits(group(this.scope, 'Digits'), String(action.digit), this.hand);
  }

  private async rubSquare(action: Extract<Action, { do: 'rub'; square: unknown }>) {
    await this.penTo(action.square, action.slot);
    await this.hand.hit(button(group(this.scope, 'Digits'), 'Rub out'));
  }

  private async finish(action: Named<'finish'>): Promise<void> {
    const { scope, hand, stage } = this;
    const row = /^row:(\d)$/.exec(action.what)?.[1];
    if (row !== undefined) {
      if (stage === 'record' || stage === 'paper') await this.touchRow(Number(row));
      else if (stage === 'cells') {
        await choose(scope, 'Facts', hand);
        await press(button(group(scope, 'Rows'), new RegExp(`^${ROWS[Number(row)]}`)), hand);
      } else return this.plain(action);
      return hand.hit(button(scope, 'This row is done'));
    }
    if (stage === 'walk' || stage === 'build') return hand.hit(button(scope, 'I am finished'));
    await this.toLine(undefined);
    const name =
      action.what === 'product' ? 'The product is done' : /^(I am finished|Leave it like this)$/;
    return hand.hit(button(scope, name));
  }
}
