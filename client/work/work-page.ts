import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Square, Work } from '../../engine/child.ts';
import type { Cell } from '../mat/cells.ts';
import { squareCell } from '../mat/cells.ts';
import type { PwMat } from '../mat/mat.ts';
import type { OpenDeed, PwOpenSquare } from '../mat/open-square.ts';
import type { PaperSpot, PwPaper } from '../mat/paper.ts';
import { showTravel } from '../mat/travel.ts';
import type { MatView } from '../mat/view.ts';
import type { PwPlayer } from '../present/player.ts';
import { buttonStyles } from '../ui/buttons.ts';
import { words } from '../words/words.ts';
import { ghostOf, movesOf } from './bench.ts';
import { DeskController } from './desk.ts';
import { Drag, type Source } from './drag.ts';
import { headerOf } from './header.ts';
import { cellKey } from './keys.ts';
import { lineKey, pressLine } from './line-presses.ts';
import { pageOf } from './pages.ts';
import { doDeed, openSquare, pressCell } from './presses.ts';
import type { Round } from './round.ts';
import { type Sentence, sentence } from './says.ts';
import type { Desk } from './tool.ts';
import { matViewOf, openViewOf, paperViewOf } from './view-of.ts';
import { workPageStyles } from './work-page-styles.ts';
import type { Keeping, WorkStore } from './work-store.ts';
import '../mat/paper.ts';

/** Until then the page has enough to do with appearing, in ms. */
const SETTLED = 2_000;

const openSquareElement = () => import('../mat/open-square.ts');

/** What is fetched only when it is wanted has to be here before the network may go. */
const fetchAhead = ({ works }: Keeping): void =>
  void Promise.allSettled([
    openSquareElement(),
    import('./hints.ts'),
    import('./result.ts'),
    import('./keys-list.ts'),
    ...(works.some(({ problem }) => problem.policy.presentation)
      ? [import('./see-worked.ts')]
      : []),
  ]);

const doneIn = ({ works }: Keeping): number => works.reduce((sum, { log }) => sum + log.length, 0);

const WIDE = '(min-width: 1200px)';

/** The child's page: one mat, one sentence, one tray. Property `store`; call `refresh()` when it changed. `leave`: the way back, if there is one. */
export class PwWork extends LitElement {
  static override properties = {
    store: { attribute: false },
    leave: { attribute: false },
    dragged: { state: true },
    atResult: { state: true },
    watched: { state: true },
  };
  static override styles = [buttonStyles, workPageStyles];
  declare store: WorkStore;
  declare leave: (() => void) | null;
  /** This frame may forget what is not saved; `tab`: opens the work in a tab, if the platform allows that. */
  notice: { readonly tab: (() => void) | null } | null = null;
  /** What is said first, if anything. */
  first: Sentence | null = null;
  declare dragged: Source | null;
  declare atResult: boolean;
  /** Another problem, worked while the child looks on. */
  declare watched: TemplateResult | null;
  private at!: DeskController;
  private round: Round | null = null;
  /** Actions there were when the page was opened. */
  private doneBefore = 0;
  private shown = { problem: -1, length: 0 };
  private seen: { readonly work: Work; readonly desk: Desk; readonly view: MatView } | null = null;
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
    this.watched = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.at = new DeskController(this.store, () => this.requestUpdate());
    this.doneBefore = doneIn(this.store);
    if (this.first !== null) this.at.set({ message: this.first });
    if (this.store.works.every((work) => work.finished.problem)) void this.showResult();
    setTimeout(fetchAhead, SETTLED, this.store);
    // Whoever works will soon open a square, and what is typed into it must not be lost.
    for (const first of ['pointerdown', 'keydown'])
      this.addEventListener(first, () => void Promise.allSettled([openSquareElement()]), {
        once: true,
      });
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
    if (
      this.watched === null &&
      event.key.toLowerCase() === 'z' &&
      (event.ctrlKey || event.metaKey)
    ) {
      event.preventDefault();
      this.at.do({ do: 'undo' });
    }
  };

  /** The result is fetched when it is first wanted; without the network the page stays where it is. */
  private readonly showResult = async (): Promise<void> => {
    await import('./result.ts');
    this.atResult = true;
  };

  private readonly backToWork = (): void => {
    if (this.at.store !== this.store) this.at = new DeskController(this.store, this.refresh);
    this.atResult = false;
  };

  /** Another round, on what was not right. */
  private readonly workAgain = (event: CustomEvent<Round>): void => {
    this.round = event.detail;
    this.at = new DeskController(event.detail, this.refresh);
    this.atResult = false;
  };

  /** The list of keys, once it was asked for. */
  private keys: TemplateResult | typeof nothing = nothing;

  private readonly help = async (): Promise<void> => {
    this.keys = (await import('./keys-list.ts')).keysList();
    this.requestUpdate();
    await this.updateComplete;
    this.find<HTMLDialogElement>('#keys')?.showModal();
  };

  /** Where the teacher allows it; that it was asked for stands in the record, as a question would. */
  private readonly watch = async (): Promise<void> => {
    try {
      const { seeWorked } = await import('./see-worked.ts');
      this.at.store.do(this.at.desk.problem, { do: 'hint', level: 1 });
      this.watched = seeWorked(this.at.work.problem, () => {
        this.watched = null;
      });
      await this.updateComplete;
      this.find<PwPlayer>('pw-player')?.focus();
    } catch {
      this.at.set({ message: sentence('messageUnreachable') });
    }
  };

  private get mayWatch(): boolean {
    const { problem, finished } = this.at.work;
    // On an open mat without numbers there is nothing to work.
    const nothing = problem.walk === null && problem.multiplier.digits.length === 0;
    return problem.policy.presentation && !finished.problem && !nothing;
  }

  private grabs(source: Source): boolean {
    if (this.at.work.finished.problem) return false;
    return source.what !== 'pile' || this.at.tool.grabs === true;
  }

  private drop(source: Source, x: number, y: number): void {
    const mat = this.find<PwMat>('pw-mat');
    const cell = mat?.cellAt(x, y) ?? null;
    if (source.what === 'pick') {
      const used = this.find<PwOpenSquare>('pw-open-square')?.drop(source.index, x, y) ?? true;
      if (!used && source.kind === 10 && cell?.at === 'square')
        doDeed(this.at, { is: 'exchangeAt', to: [cell.row, cell.column] });
      return;
    }
    const spot = source.what === 'digit' ? this.find<PwPaper>('pw-paper')?.spotAt(x, y) : null;
    if (spot && source.what === 'digit') {
      pressLine(this.at, spot);
      this.at.tool.digit?.(this.at, source.digit);
    } else if (mat !== null && cell !== null)
      this.at.tool.drop?.(this.at, source, cell, mat.inUpperHalf(cell, x, y));
  }

  /** What was done last, if it was done just now. */
  private showLast(): void {
    const { log } = this.at.work;
    const fresh = log.length > this.shown.length && this.shown.problem === this.at.desk.problem;
    const action = fresh ? log.at(-1)?.action : undefined;
    this.shown = { problem: this.at.desk.problem, length: log.length };
    showTravel(this.find<PwMat>('pw-mat'), action, this.at.work);
  }

  protected override willUpdate(): void {
    this.hadFocus = this.shadowRoot?.activeElement != null;
  }

  /** What is pressed may vanish by being pressed: the focus then goes to what comes next. */
  protected override updated(): void {
    this.showLast();
    if (!this.hadFocus || this.shadowRoot?.activeElement != null) return;
    (this.find<HTMLElement>('.big') ?? this.find<HTMLElement>('h1'))?.focus();
  }

  private key({ cell, event }: { cell: Cell; event: KeyboardEvent }): void {
    if (event.key === '?') void this.help();
    const outcome = event.key === '?' ? 'unused' : cellKey(this.at, cell, event);
    if (outcome === 'unused') return;
    event.preventDefault();
    if (outcome !== 'used') void this.find<PwMat>('pw-mat')?.walkTo(outcome);
  }

  private lineKey({ spot, event }: { spot: PaperSpot; event: KeyboardEvent }): void {
    const outcome = event.key === '?' ? 'unused' : lineKey(this.at, spot, event);
    if (event.key === '?') void this.help();
    else if (outcome === 'unused') return;
    event.preventDefault();
    const to = this.at.desk.spot;
    if (outcome === 'on' && to !== null && 'line' in to)
      this.find<PwPaper>('pw-paper')?.focusSpot(to);
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

  private async fetchOpened(): Promise<void> {
    try {
      await openSquareElement();
    } catch {
      this.at.set({ open: null, message: sentence('messageUnreachable') });
    }
  }

  private opened() {
    const { open } = this.at.desk;
    if (open === null) return nothing;
    if (customElements.get('pw-open-square') === undefined) void this.fetchOpened();
    return html`<pw-open-square
      .view=${openViewOf(this.at.work, this.at.desk, open)}
      @deed=${(event: CustomEvent<OpenDeed>) => doDeed(this.at, event.detail)}
      @go=${(event: CustomEvent<Square>) => this.go(event.detail)}
      @shut=${this.shut}
    ></pw-open-square>`;
  }

  private get hasMat(): boolean {
    return pageOf(this.at.work.problem.stage).mat;
  }

  /** The same view as before while nothing on the mat has changed: sending and dragging are no reason to draw it. */
  private get matView(): MatView {
    const { work, desk } = this.at;
    if (this.seen?.work !== work || this.seen.desk !== desk)
      this.seen = { work, desk, view: matViewOf(work, desk) };
    return this.seen.view;
  }

  private mat() {
    if (!this.hasMat) return nothing;
    return html`<pw-mat
      .view=${this.matView}
      ?grabs=${this.at.tool.grabs === true}
      @cell=${(event: CustomEvent<Cell>) => pressCell(this.at, event.detail)}
      @cell-key=${(event: CustomEvent<{ cell: Cell; event: KeyboardEvent }>) => this.key(event.detail)}
    ></pw-mat>`;
  }

  private paper() {
    const { at } = this;
    if (at.work.problem.prompts.length > 0) return nothing;
    return html`<pw-paper
      ?whole=${!this.hasMat}
      ?row=${this.hasMat && at.desk.tool === 'write'}
      ?writes=${['read', 'write', 'sum'].includes(at.desk.tool)}
      .view=${paperViewOf(at.work, at.desk, at.tools)}
      @line-cell=${(event: CustomEvent<PaperSpot>) => pressLine(at, event.detail)}
      @line-key=${(event: CustomEvent<{ spot: PaperSpot; event: KeyboardEvent }>) => this.lineKey(event.detail)}
    ></pw-paper>`;
  }

  private onward() {
    const last = this.at.store.works.every((work) => work.finished.problem);
    const go = () => {
      if (last) void this.showResult();
      else this.at.goOn();
    };
    return html`<button class="primary big" data-do="goOn" @click=${go}>${words(last ? 'seeResult' : 'nextProblem')}</button>`;
  }

  /** Said before the first move on this page: later, unsaved work might be left behind. */
  private forgets() {
    const { notice, store } = this;
    if (notice === null || this.at.store !== store || doneIn(store) > this.doneBefore)
      return nothing;
    const { tab } = notice;
    return html`<p class="notice"><span>${words('mayForget')}</span>${tab === null ? nothing : html`<button data-do="openInTab" @click=${tab}>${words('openInTab')}</button>`}</p>`;
  }

  private tray() {
    return html`<div class="tray">${this.at.work.finished.problem ? this.onward() : this.at.tool.tray(this.at)}</div>`;
  }

  private mainPart(open: boolean) {
    if (open && !this.wide.matches) return this.opened();
    const alone = !this.hasMat || this.at.work.problem.prompts.length > 0;
    return html`<div class=${alone ? 'middle alone' : 'middle'}>${this.mat()}${open ? this.opened() : this.paper()}</div>
      ${open ? nothing : this.tray()}${movesOf(this.at)}`;
  }

  protected override render() {
    if (this.watched !== null) return this.watched;
    if (this.atResult)
      return html`<pw-result
        .store=${this.store}
        .round=${this.round}
        @back=${this.backToWork}
        @again=${this.workAgain}
      ></pw-result>`;
    const open = this.at.desk.open !== null;
    const notice = this.forgets();
    const place = !open ? '' : this.wide.matches ? 'beside' : 'over';
    return html`<div class="page ${place} ${this.at.desk.tool} at-${this.at.work.problem.stage} ${notice === nothing ? '' : 'noticed'}">
      ${headerOf(this.at, () => void this.help(), this.at.store.alone ? () => void this.showResult() : this.leave, this.mayWatch ? () => void this.watch() : null)} ${notice}${this.mainPart(open)}
      <div class="unseen" role="status">${this.at.desk.status}</div>
      ${this.dragged === null ? nothing : ghostOf(this.at, this.dragged)}${this.keys}
    </div>`;
  }
}

customElements.define('pw-work', PwWork);
