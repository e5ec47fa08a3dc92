import { type Hand, type HandEvent, startHand, stepHand } from '../mat/hand.ts';

/** What a press on the page takes hold of; elements name it in `data-source`. */
export type Source =
  | { readonly what: 'bar'; readonly kind: number }
  | { readonly what: 'digit'; readonly digit: number }
  | { readonly what: 'pile'; readonly row: number; readonly column: number }
  | { readonly what: 'pick'; readonly index: number; readonly kind: number };

const parse = (text: string): Source | null => {
  const [what, a, b] = text.split(':');
  const [x, y] = [Number(a), Number(b)];
  if (what === 'bar') return { what, kind: x };
  if (what === 'digit') return { what, digit: x };
  if (what === 'pile') return { what, row: x, column: y };
  return what === 'pick' ? { what, index: x, kind: y } : null;
};

const sourceOf = (event: Event): Source | null => {
  for (const target of event.composedPath())
    if (target instanceof HTMLElement && target.dataset.source !== undefined)
      return parse(target.dataset.source);
  return null;
};

interface Page {
  /** Whether this can be dragged now. */
  grabs(source: Source): boolean;
  /** Shows the thing in the hand, or nothing. */
  show(source: Source | null): void;
  ghost(): HTMLElement | null;
  drop(source: Source, x: number, y: number): void;
}

/** Joins pointer events of mouse, pen and touch to the hand; redraws once a frame, by transform only. */
export class Drag {
  private hand: Hand<Source> = startHand();
  private readonly page: Page;
  private at = { x: 0, y: 0 };
  private frame = 0;

  constructor(page: Page) {
    this.page = page;
  }

  readonly down = (event: PointerEvent): void => {
    const source = sourceOf(event);
    if (source === null || event.button !== 0 || !this.page.grabs(source)) return;
    this.feed({ is: 'down', source, x: event.clientX, y: event.clientY, pointer: event.pointerId });
    addEventListener('pointermove', this.move);
    addEventListener('pointerup', this.up);
    addEventListener('pointercancel', this.cancel);
    addEventListener('keydown', this.escape, true);
  };

  readonly cancel = (): void => this.feed({ is: 'cancel' });

  private readonly move = (event: PointerEvent): void =>
    this.feed({ is: 'move', x: event.clientX, y: event.clientY, pointer: event.pointerId });

  private readonly up = (event: PointerEvent): void =>
    this.feed({ is: 'up', x: event.clientX, y: event.clientY, pointer: event.pointerId });

  private readonly escape = (event: KeyboardEvent): void => {
    if (event.key === 'Escape') this.cancel();
  };

  private feed(event: HandEvent<Source>): void {
    const [hand, deed] = stepHand(this.hand, event);
    this.hand = hand;
    if (deed !== null && 'x' in deed) this.at = { x: deed.x, y: deed.y };
    if (deed?.is === 'take') this.page.show(deed.source);
    if (deed?.is === 'take' || deed?.is === 'follow') this.follow();
    if (deed?.is === 'release' || deed?.is === 'drop') this.page.show(null);
    if (deed?.is === 'drop') {
      this.swallowClick();
      this.page.drop(deed.source, deed.x, deed.y);
    }
    if (hand.state === 'idle') this.letGo();
  }

  private follow(): void {
    cancelAnimationFrame(this.frame);
    this.frame = requestAnimationFrame(() => {
      const ghost = this.page.ghost();
      if (ghost !== null)
        ghost.style.transform = `translate3d(${this.at.x}px, ${this.at.y}px, 0) translate(-50%, -60%)`;
    });
  }

  private letGo(): void {
    removeEventListener('pointermove', this.move);
    removeEventListener('pointerup', this.up);
    removeEventListener('pointercancel', this.cancel);
    removeEventListener('keydown', this.escape, true);
  }

  /** The browser sends a click where a drag ends on what it began on; it was not meant. One elsewhere is. */
  private swallowClick(): void {
    const { x, y } = this.at;
    const swallow = (event: MouseEvent) => {
      if (event.clientX === x && event.clientY === y) event.stopPropagation();
    };
    addEventListener('click', swallow, { capture: true, once: true });
    setTimeout(() => removeEventListener('click', swallow, { capture: true }), 60);
  }
}
