import type { Action, Square, Stage } from '../../engine/index.ts';
import type { ChildPage } from '../support/child-page.ts';
import { PLACES, ROWS } from '../support/work-page.ts';
import { KeyboardHand } from './keyboard-hand.ts';

type LineWrite = Extract<Action, { do: 'write' | 'rub'; line: unknown }>;

const WITH_BARS = ['Tiles', 'Lay', 'Count', 'Row', 'Slide', 'Read'];
/** The moves of each stage's page, in their order. */
const TOOLS: Partial<Record<Stage, readonly string[]>> = {
  walk: ['Questions'],
  build: ['Tiles', 'Read back'],
  facts: WITH_BARS,
  record: ['Tiles', 'Lay', 'Count', 'Rows', 'Slide', 'Read'],
  cells: ['Tiles', 'Facts', 'Add'],
  paper: ['Rows', 'Add'],
  open: ['Tiles', 'Lay', 'Count', 'Row', 'Slide', 'Facts', 'Rows', 'Read'],
};

/** Any stage by keys alone. */
export class StageKeys extends KeyboardHand {
  private readonly stage: Stage;
  /** Multiplier rows by the line that was begun for them. */
  private readonly rows = new Map<string, number>();
  private readonly multiplier: string;

  constructor(page: ChildPage, stage: Stage, multiplier = '') {
    super(page, TOOLS[stage]);
    this.stage = stage;
    this.multiplier = multiplier;
  }

  override async do(action: Action): Promise<void> {
    switch (action.do) {
      case 'layBars':
        return action.of === undefined ? super.do(action) : this.layFact(action, action.of);
      case 'say':
        return 'prompt' in action ? this.answer(action) : super.do(action);
      case 'begin':
        this.rows.set(action.line, action.row);
        return this.touchRow(action.row);
      case 'write':
        return 'square' in action
          ? this.writeSquare(action)
          : this.writeLine(action, String(action.digit));
      case 'rub':
        return 'square' in action ? super.do(action) : this.writeLine(action, 'Backspace');
      case 'hint':
        return this.pressButton(/^Help me$/);
      default:
        return super.do(action);
    }
  }

  private async layFact(
    { square, kind }: Extract<Action, { do: 'layBars' }>,
    of: Square,
  ): Promise<void> {
    await this.choose('Lay');
    await this.toSquare(of);
    await this.press('Enter');
    await this.toSquare(square);
    await this.press(String(kind));
  }

  private async answer({ prompt, answer }: Extract<Action, { prompt: number }>): Promise<void> {
    await this.choose(this.stage === 'walk' ? 'Questions' : 'Read back');
    await this.pressButton(new RegExp(`^Question ${prompt + 1}(,|$)`));
    if (typeof answer === 'string') {
      await this.toMat();
      return this.press(...answer, 'Enter');
    }
    await this.toSquare(answer);
    return this.press(' ');
  }

  private async touchRow(row: number): Promise<void> {
    await this.choose('Rows');
    const digit = [...this.multiplier].reverse()[row];
    await this.pressButton(new RegExp(`, × ${digit}( ✓)?$`));
  }

  private async writeLine({ line, place }: LineWrite, key: string): Promise<void> {
    const row = this.rows.get(line.replace('carry', 'partial'));
    const name = new RegExp(`^${row === undefined ? 'product' : ROWS[row]}, .*:`);
    await this.tabTo(`${name}`, ({ role, name: text }) => role === 'button' && name.test(text));
    await this.walkTo(new RegExp(`, ${PLACES[place]}:`), place);
    if (line.startsWith('carry')) await this.press('+');
    await this.press(key);
  }

  /** Along the line to the right until the units, then to the left. */
  private async walkTo(name: RegExp, place: number): Promise<void> {
    if (name.test((await this.focused()).name)) return;
    await this.press(...Array<string>(12).fill('ArrowRight'));
    await this.press(...Array<string>(place).fill('ArrowLeft'));
  }

  private async writeSquare(action: Extract<Action, { do: 'write'; square: unknown }>) {
    await this.choose('Facts');
    await this.toSquare(action.square);
    await this.press('Escape', 'Enter', ...(action.slot === 'own' ? [] : ['Enter']));
    await this.press(String(action.digit));
  }

  protected override async finish(what: string): Promise<void> {
    const row = /^row:(\d)$/.exec(what)?.[1];
    if (row === undefined) {
      if (this.stage === 'cells') await this.choose('Add');
      else if (this.stage === 'paper') await this.pressButton(/^Add$/);
      else if (this.stage !== 'walk' && this.stage !== 'build') return super.finish(what);
      return this.pressButton(what === 'product' ? /^The product is done$/ : /^I am finished$/);
    }
    if (this.stage === 'record' || this.stage === 'paper') await this.touchRow(Number(row));
    else if (this.stage === 'cells') {
      await this.choose('Facts');
      await this.pressButton(new RegExp(`^${ROWS[Number(row)]}`));
    } else return super.finish(what);
    return this.pressButton(/^This row is done$/);
  }
}
