import { html, LitElement, nothing } from 'lit';
import type { Square } from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import { squareCell } from '../mat/cells.ts';
import type { PwMat } from '../mat/mat.ts';
import type { OpenDeed, PwOpenSquare } from '../mat/open-square.ts';
import type { PwPaper } from '../mat/paper.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { words } from '../words/words.ts';
import { ghostOf, movesOf, pileKinds } from './bench.ts';
import { DeskController } from './desk.ts';
import { Drag, type Source } from './drag.ts';
import { headerOf } from './header.ts';
import { cellKey } from './keys.ts';
import { keysList } from './keys-list.ts';
import { doDeed, layTile, openSquare, pressCell, pressPoint } from './presses.ts';
import { trayOf } from './trays.ts';
import { matViewOf, openViewOf, paperViewOf } from './view-of.ts';
import { workPageStyles } from './work-page-styles.ts';
import type { WorkStore } from './work-store.ts';
import '../mat/mat.ts';
import '../mat/open-square.ts';
import '../mat/paper.ts';
import './result.ts';

const WIDE = '(min-width: 1200px)';

/** The child's page: one mat, one sentence, one tray. Property `store`; call `refresh()` when it changed. `leave`: the way back, if there is one. */
export class PwWork extends LitElement {
  static override properties = {
    store: { attribute: false },
    leave: { attribute: false },
    dragged: { state: true },
    atResult: { state: true },
  };
  static override styles = [buttonStyles, workPageStyles];
  declare store: WorkStore;
  declare leave: (() => void) | null;
  declare dragged: Source | null;
  declare atResult: boolean;
  private at!: DeskController;
  private shown = { problem: -1, length: 0 };
  private hadFocus = false;
  private readonly wide = matchMedia(WIDE);
  private readonly drag = new Drag({
    grabs: (source) => this.grabs(source),
    show: (source) => {
      this.dragged = source;
    },
    ghost: () => this.renderRoot.querySelector<HTMLElement>('.ghost'),
    drop: (source, x, y) => this.drop(source, x, y),
  });

  constructor() {
    super();
    this.leave = null;
    this.dragged = null;
    this.atResult = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.at = new DeskController(this.store, () => this.requestUpdate());
    this.atResult = this.store.works.every((work) => work.finished.problem);
    this.wide.addEventListener('change', this.refresh);
    this.addEventListener('pointerdown', this.drag.down);
    this.addEventListener('keydown', this.pageKey);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.wide.removeEventListener('change', this.refresh);
    this.removeEventListener('pointerdown', this.drag.down);
    this.removeEventListener('keydown', this.pageKey);
    this.drag.cancel();
  }

  readonly refresh = (): void => this.requestUpdate();

  private find<T extends Element>(name: string): T | null {
    return this.renderRoot.querySelector<T>(name);
  }

  private readonly pageKey = (event: KeyboardEvent): void => {
    if (event.key.toLowerCase() === 'z' && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      this.at.do({ do: 'undo' });
    }
  };

  private readonly backToWork = (): void => {
    this.atResult = false;
  };

  private readonly help = (): void => this.find<HTMLDialogElement>('#keys')?.showModal();

  private grabs(source: Source): boolean {
    if (this.at.work.finished.problem) return false;
    return source.what !== 'pile' || this.at.desk.tool === 'slide';
  }

  private drop(source: Source, x: number, y: number): void {
    if (source.what === 'pick') {
      this.find<PwOpenSquare>('pw-open-square')?.drop(source.index, x, y);
      return;
    }
    const cell = this.find<PwMat>('pw-mat')?.cellAt(x, y) ?? null;
    if (cell === null) return;
    if (source.what === 'digit' && cell.at !== 'square')
      layTile(this.at, { edge: cell.at, index: cell.index }, source.digit);
    if (cell.at !== 'square') return;
    const square: Square = [cell.row, cell.column];
    if (source.what === 'bar')
      this.at.do({ do: 'layBars', square, kind: source.kind, count: this.at.desk.howMany });
    if (source.what === 'pile') this.slide([source.row, source.column], square);
  }

  private slide(from: Square, to: Square): void {
    if (String(from) !== String(to)) this.at.do({ do: 'slide', from, to });
  }

  /** A slide or an exchange is seen to go from square to square. */
  private showTravel(): void {
    const { log } = this.at.work;
    const fresh = log.length > this.shown.length && this.shown.problem === this.at.desk.problem;
    const action = fresh ? log.at(-1)?.action : undefined;
    this.shown = { problem: this.at.desk.problem, length: log.length };
    if (action?.do !== 'slide' && action?.do !== 'exchange') return;
    const kinds = action.do === 'exchange' ? [1] : pileKinds(this.at, ...action.to).slice(0, 5);
    void this.find<PwMat>('pw-mat')?.fly(action.from, action.to, kinds);
  }

  protected override willUpdate(): void {
    this.hadFocus = this.shadowRoot?.activeElement != null;
  }

  /** What is pressed may vanish by being pressed: the focus then goes to what comes next. */
  protected override updated(): void {
    this.showTravel();
    if (!this.hadFocus || this.shadowRoot?.activeElement != null) return;
    (this.find<HTMLElement>('.big') ?? this.find<HTMLElement>('h1'))?.focus();
  }

  private key({ cell, event }: { cell: Cell; event: KeyboardEvent }): void {
    if (event.key === '?') this.help();
    const outcome = event.key === '?' ? 'unused' : cellKey(this.at, cell, event);
    if (outcome === 'unused') return;
    event.preventDefault();
    if (outcome !== 'used') void this.find<PwMat>('pw-mat')?.walkTo(outcome);
  }

  private lineKey({ place, event }: { place: number; event: KeyboardEvent }): void {
    const { at } = this;
    if (/^\d$/.test(event.key))
      at.do({ do: 'write', line: 'product', place, digit: Number(event.key) });
    else if (event.key === 'Backspace' || event.key === 'Delete')
      at.do({ do: 'rub', line: 'product', place });
    else if (event.key === '.' || event.key === ',') {
      at.set({ tool: 'read', place });
      pressPoint(at);
    } else return;
    event.preventDefault();
    if (/^\d$/.test(event.key)) this.find<PwPaper>('pw-paper')?.focusPlace(place - 1);
  }

  private shut(): void {
    const { open } = this.at.desk;
    this.at.set({ open: null });
    if (open !== null)
      void this.updateComplete.then(() => this.find<PwMat>('pw-mat')?.walkTo(squareCell(open)));
  }

  private go(square: Square): void {
    openSquare(this.at, square);
    void this.updateComplete.then(() => this.find<PwOpenSquare>('pw-open-square')?.focusFirst());
  }

  private opened() {
    const { open } = this.at.desk;
    if (open === null) return nothing;
    return html`<pw-open-square
      .view=${openViewOf(this.at.work, this.at.desk, open)}
      @deed=${(event: CustomEvent<OpenDeed>) => doDeed(this.at, event.detail)}
      @go=${(event: CustomEvent<Square>) => this.go(event.detail)}
      @shut=${this.shut}
    ></pw-open-square>`;
  }

  private mat() {
    return html`<pw-mat
      .view=${matViewOf(this.at.work, this.at.desk)}
      ?grabs=${this.at.desk.tool === 'slide'}
      @cell=${(event: CustomEvent<Cell>) => pressCell(this.at, event.detail)}
      @cell-key=${(event: CustomEvent<{ cell: Cell; event: KeyboardEvent }>) => this.key(event.detail)}
    ></pw-mat>`;
  }

  private paper() {
    return html`<pw-paper
      .view=${paperViewOf(this.at.work, this.at.desk)}
      @line-cell=${(event: CustomEvent<number>) => this.at.set({ tool: 'read', place: event.detail, message: null })}
      @line-key=${(event: CustomEvent<{ place: number; event: KeyboardEvent }>) => this.lineKey(event.detail)}
    ></pw-paper>`;
  }

  private onward() {
    const last = this.store.works.every((work) => work.finished.problem);
    const go = () => {
      if (last) this.atResult = true;
      else this.at.goOn();
    };
    return html`<button class="primary big" data-do="goOn" @click=${go}>${words(last ? 'seeResult' : 'nextProblem')}</button>`;
  }

  private tray() {
    return html`<div class="tray">${this.at.work.finished.problem ? this.onward() : trayOf(this.at)}</div>`;
  }

  private mainPart(open: boolean) {
    if (open && !this.wide.matches) return this.opened();
    return html`<div class="middle">${this.mat()}${open ? this.opened() : this.paper()}</div>
      ${open ? nothing : this.tray()}${movesOf(this.at)}`;
  }

  protected override render() {
    if (this.atResult)
      return html`<pw-result .store=${this.store} @back=${this.backToWork}></pw-result>`;
    const open = this.at.desk.open !== null;
    const place = !open ? '' : this.wide.matches ? 'beside' : 'over';
    return html`<div class="page ${place} ${this.at.desk.tool}">
      ${headerOf(this.at, this.help, this.leave)} ${this.mainPart(open)}
      <div class="unseen" role="status">${this.at.desk.status}</div>
      ${this.dragged === null ? nothing : ghostOf(this.at, this.dragged)}${keysList()}
    </div>`;
  }
}

customElements.define('pw-work', PwWork);
