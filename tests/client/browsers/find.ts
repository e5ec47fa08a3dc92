/** A name or a text: part of it in any case, or all of it, or a regular expression. */
export type Wanted =
  | { readonly part: string }
  | { readonly whole: string }
  | { readonly pattern: string; readonly flags: string };

/** One step on the way to a thing: what to look for in what was found so far, or which of these to take. */
export type Step =
  | { readonly role: string; readonly name?: Wanted; readonly pressed?: boolean; level?: number }
  | { readonly text: Wanted }
  | { readonly containing: string }
  | { readonly nth: number };

/**
 * Goes the steps in the page, through every shadow tree, to what is shown and not hidden from ears. Runs inside the
 * browser, so it holds everything it needs. Roles and names are read off the markup the way this house writes it:
 * the same scripts run in Chromium by the full algorithm, and a test compares with what an engine itself says.
 */
export const find = (steps: readonly Step[]): Element[] => {
  const tidy = (text: string | null | undefined) => (text ?? '').replace(/\s+/g, ' ').trim();
  const up = (element: Element): Element | null =>
    element.assignedSlot ??
    element.parentElement ??
    (element.getRootNode() as Partial<ShadowRoot>).host ??
    null;
  /** Everything inside, in the order of the page, into every shadow tree. */
  const within = (root: Element | Document | ShadowRoot, all: Element[] = []): Element[] => {
    if (root instanceof Element && root.shadowRoot !== null) within(root.shadowRoot, all);
    for (const child of root.children) {
      all.push(child);
      within(child, all);
    }
    return all;
  };
  const hidden = (element: Element): boolean => {
    for (let at: Element | null = element; at !== null; at = up(at))
      if (at.getAttribute('aria-hidden') === 'true' || (at as HTMLElement).inert) return true;
    return !element.checkVisibility({ visibilityProperty: true });
  };
  const TAGS: Record<string, string> = { BUTTON: 'button', NAV: 'navigation', FIELDSET: 'group' };
  const roleOf = (element: Element): string | null => {
    const told = element.getAttribute('role') ?? TAGS[element.tagName];
    if (told !== undefined) return told;
    if (/^H[1-6]$/.test(element.tagName)) return 'heading';
    const named = element.hasAttribute('aria-label') || element.hasAttribute('aria-labelledby');
    return element.tagName === 'SECTION' && named ? 'region' : null;
  };
  const textOf = (node: Node): string => {
    if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
    if (!(node instanceof Element) || node.getAttribute('aria-hidden') === 'true') return '';
    return node.getAttribute('aria-label') ?? [...node.childNodes].map(textOf).join('');
  };
  const nameOf = (element: Element): string => {
    const by = element.getAttribute('aria-labelledby')?.split(/\s+/) ?? [];
    const root = element.getRootNode() as Document | ShadowRoot;
    const labels = by.flatMap((id) => root.getElementById(id) ?? []);
    return tidy(labels.length > 0 ? labels.map(textOf).join(' ') : textOf(element));
  };
  const fits = (text: string, wanted: Wanted | undefined): boolean => {
    if (wanted === undefined) return true;
    if ('pattern' in wanted) return new RegExp(wanted.pattern, wanted.flags).test(text);
    if ('whole' in wanted) return text === wanted.whole;
    return text.toLowerCase().includes(wanted.part.toLowerCase());
  };
  const go = (found: readonly (Element | Document)[], step: Step): Element[] => {
    const elements = found.filter((one) => one instanceof Element);
    if ('nth' in step) return elements.slice(step.nth, step.nth + 1);
    if ('containing' in step)
      return elements.filter((one) => tidy(one.textContent).includes(step.containing));
    const inside = [...new Set(found.flatMap((one) => within(one)))];
    if ('text' in step)
      return inside.filter(
        (one) =>
          fits(tidy(one.textContent), step.text) &&
          ![...one.children].some((child) => fits(tidy(child.textContent), step.text)) &&
          !hidden(one),
      );
    return inside.filter(
      (one) =>
        roleOf(one) === step.role &&
        (step.pressed === undefined ||
          (one.getAttribute('aria-pressed') === 'true') === step.pressed) &&
        (step.level === undefined || one.tagName === `H${step.level}`) &&
        fits(nameOf(one), step.name) &&
        !hidden(one),
    );
  };
  return steps.reduce<readonly (Element | Document)[]>(go, [document]) as Element[];
};

type Find = typeof find;
export type Spot = { readonly x: number; readonly y: number };

/**
 * Where to point at a thing: the middle of it, once it is the only one, rests, is enabled and lies under the pointer
 * there. Otherwise says what is in the way. Runs inside the browser.
 */
export const spots = async (
  finder: Find,
  ways: readonly (readonly Step[])[],
): Promise<Spot[] | string> => {
  const found = ways.map((steps) => finder(steps));
  const bad = found.findIndex((elements) => elements.length !== 1);
  if (bad >= 0) return `${found[bad]?.length} found for ${JSON.stringify(ways[bad])}`;
  const things = found.flat();
  const off = things.find((one) => one.matches(':disabled'));
  if (off !== undefined) return `disabled: ${off.outerHTML.slice(0, 200)}`;
  for (const one of things) {
    const { left, top, right, bottom } = one.getBoundingClientRect();
    const out = left < 0 || top < 0 || right > innerWidth || bottom > innerHeight;
    if (out) one.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
  }
  const boxes = () => things.map((one) => one.getBoundingClientRect());
  const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
  const before = JSON.stringify(boxes());
  // What a resize of the mat makes of its squares is there a frame after what caused it, or two.
  for (let frames = 0; frames < 3; frames += 1) await frame();
  if (JSON.stringify(boxes()) !== before) return 'it still moves';
  const middles = boxes().map((box) => ({
    x: box.left + box.width / 2,
    y: box.top + box.height / 2,
  }));
  for (const [i, { x, y }] of middles.entries()) {
    let at = document.elementFromPoint(x, y);
    while (at?.shadowRoot) {
      const deeper: Element | null = at.shadowRoot.elementFromPoint(x, y);
      if (deeper === null || deeper === at) break;
      at = deeper;
    }
    const hit = at;
    while (at !== null && at !== things[i])
      at =
        at.assignedSlot ??
        at.parentElement ??
        (at.getRootNode() as Partial<ShadowRoot>).host ??
        null;
    if (at === null) return `something lies over it: ${hit?.outerHTML.slice(0, 200)}`;
  }
  return middles;
};
