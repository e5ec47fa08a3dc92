import type { Page } from 'playwright-core';
import { laidOut } from '../support/open-page.ts';

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A thing on the page, in CSS pixels: something to press, or the mat or the paper as a whole. */
interface Thing extends Box {
  readonly kind: 'button' | 'square' | 'sheet';
  readonly what: string;
  /** Inside something that scrolls, or on the paper. */
  readonly within: boolean;
  /** What of it is to be seen, where something that scrolls cuts it off. */
  readonly seen: Box;
}

interface Layout {
  readonly window: number;
  readonly page: number;
  readonly things: readonly Thing[];
  /** Texts that are cut off, and what scrolls sideways beside the mat and the paper. */
  readonly lost: readonly string[];
}

/** The page as it lies, or the dialog that is open on it. */
export const layoutOf = async (page: Page): Promise<Layout> => {
  await laidOut(page);
  return page.evaluate(() => {
    const within = (root: Document | ShadowRoot | Element): Element[] =>
      [...root.children].flatMap((child) => [
        child,
        ...(child.shadowRoot === null ? [] : within(child.shadowRoot)),
        ...within(child),
      ]);
    const above = (one: Element): Element[] => {
      const parent = one.parentElement ?? (one.getRootNode() as ShadowRoot).host;
      return parent ? [parent, ...above(parent)] : [];
    };
    const what = (one: Element) =>
      (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 60);
    const sheets = 'pw-mat, pw-paper';
    const everything = within(document);
    const dialog = everything.find((one) => one.matches('dialog[open]'));
    const shown = (dialog === undefined ? everything : within(dialog)).filter((one) =>
      one.checkVisibility(),
    );

    const lost: string[] = [];
    const things: Thing[] = [];
    for (const one of shown) {
      const over = (at: Element) => getComputedStyle(at).overflowX;
      const overflow = over(one);
      const isSheet = [one, ...above(one)].some((each) => each.matches(sheets));
      const tooWide = one.scrollWidth > one.clientWidth + 1;
      if (tooWide && !isSheet && ['auto', 'scroll'].includes(overflow))
        lost.push(`${what(one)}: scrolls sideways`);
      const isText = [...one.childNodes].some(
        ({ nodeType, textContent }) => nodeType === 3 && textContent?.trim(),
      );
      const tooLarge = tooWide || one.scrollHeight > one.clientHeight + 1;
      const holds = one.matches('button') || ['hidden', 'clip'].includes(overflow);
      if (isText && holds && tooLarge && !one.matches('.unseen'))
        lost.push(`${what(one)}: its text has no room`);

      const kind = one.matches('button, a[href]')
        ? 'button'
        : one.matches('[role=gridcell]')
          ? 'square'
          : one.matches(sheets)
            ? 'sheet'
            : null;
      if (kind === null) continue;
      const { left, top, right, bottom } = one.getBoundingClientRect();
      const cutting = above(one).filter(
        (each) =>
          over(each) !== 'visible' && each !== document.documentElement && each !== document.body,
      );
      const seen = cutting.reduce(
        (box, each) => {
          const edge = each.getBoundingClientRect();
          return {
            left: Math.max(box.left, edge.left),
            top: Math.max(box.top, edge.top),
            right: Math.min(box.right, edge.right),
            bottom: Math.min(box.bottom, edge.bottom),
          };
        },
        { left, top, right, bottom },
      );
      const inside = isSheet || cutting.some((each) => ['auto', 'scroll'].includes(over(each)));
      things.push({ kind, what: what(one), left, top, right, bottom, within: inside, seen });
    }
    return { window: innerWidth, page: document.documentElement.scrollWidth, things, lost };
  });
};

/** Squares under 44 pixels (our own measure for touch), other things to press under 24 (WCAG 2.2, 2.5.8). */
export const smallIn = ({ things }: Layout): string[] =>
  things.flatMap(({ kind, what, left, top, right, bottom }) => {
    const least = kind === 'square' && what.startsWith('row ') ? 44 : 24;
    return Math.min(right - left, bottom - top) < least - 0.01
      ? [`${what}: ${right - left} × ${bottom - top}`]
      : [];
  });

/** More than rounding. */
const SLACK = 1;

const meet = (a: Box, b: Box): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > SLACK &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > SLACK;

/**
 * What a reader loses by the layout: text that has no room, something that lies over another thing or beside the page,
 * a page wider than its window. Mat and squared paper may scroll sideways: their places mean something in two directions,
 * which WCAG 2.2 excepts from 1.4.10.
 */
export const lostIn = ({ window, page, things, lost }: Layout): string[] => {
  const apart = things.filter(
    ({ kind, within }) => kind === 'sheet' || (kind === 'button' && !within),
  );
  const pressed = things.filter(({ kind }) => kind === 'button');
  return [
    ...(page > window ? [`the page: ${page} pixels wide`] : []),
    ...lost,
    ...apart
      .filter(({ left, right }) => left < 0 || right > window)
      .map(({ what }) => `${what}: beside the page`),
    ...pressed.flatMap((one, i) =>
      pressed
        .slice(i + 1)
        .flatMap((other) =>
          meet(one.seen, other.seen) ? [`${other.what}: over ${one.what}`] : [],
        ),
    ),
    ...things
      .filter(({ kind }) => kind === 'sheet')
      .flatMap((sheet) =>
        pressed
          .filter((one) => !one.within && meet(one.seen, sheet))
          .map(({ what }) => `${what}: over a sheet`),
      ),
  ];
};

/** Text spaced as wide as WCAG 2.2 names in 1.4.12, in every shadow tree that there is now. */
export const spaceText = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }',
    );
    const roots = (root: Document | ShadowRoot | Element): ShadowRoot[] =>
      [...root.children].flatMap((child) => [
        ...(child.shadowRoot === null ? [] : [child.shadowRoot, ...roots(child.shadowRoot)]),
        ...roots(child),
      ]);
    for (const root of [document, ...roots(document)]) root.adoptedStyleSheets.push(sheet);
  });
