/** Where a key leads: so many moves on, or to an end. */
type Step = 1 | -1 | 'first' | 'last';

/** Arrows and pages are what clickers send; Home and End are a keyboard's. */
const STEPS: Readonly<Record<string, Step>> = {
  ArrowRight: 1,
  ArrowDown: 1,
  PageDown: 1,
  ' ': 1,
  ArrowLeft: -1,
  ArrowUp: -1,
  PageUp: -1,
  Home: 'first',
  End: 'last',
};

interface Pressed {
  readonly key: string;
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
  composedPath(): readonly unknown[];
}

const tagOf = (target: unknown): string => (target instanceof HTMLElement ? target.localName : '');

/** What a key does to the presentation; null: it belongs to a field, a pressed button or the browser. */
export const stepOfKey = (event: Pressed): Step | null => {
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  const tag = tagOf(event.composedPath()[0]);
  if (['input', 'select', 'textarea'].includes(tag)) return null;
  if (event.key !== ' ') return STEPS[event.key] ?? null;
  if (tag === 'button') return null;
  return event.shiftKey ? -1 : 1;
};
