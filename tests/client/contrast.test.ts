import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const CSS = readFileSync(new URL('../../client/ui/tokens.css', import.meta.url), 'utf8');

const tokensIn = (block: string): Record<string, string> =>
  Object.fromEntries(
    [...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name, value]) => [name, value]),
  );

const [plain = '', ...media] = CSS.split('@media');
const light = tokensIn(plain);
/** What each bead scheme changes, by its name. */
const SCHEMES = Object.fromEntries(
  [...CSS.matchAll(/data-beads="(\w+)"\] \{([^}]*)\}/g)].map(([, name = '', block = '']) => [
    name,
    tokensIn(block),
  ]),
);
const under = (query: string) =>
  tokensIn(media.find((m) => m.trim().startsWith(`${query} {`)) ?? '');
const DARK = '(prefers-color-scheme: dark)';
const MORE = '(prefers-contrast: more)';
const dark = { ...light, ...under(DARK) };
const lightMore = { ...light, ...under(MORE) };
const darkMore = { ...dark, ...under(MORE), ...under(`${MORE} and ${DARK}`) };

/** WCAG 2.2, "relative luminance". */
const luminance = (hex: string): number => {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};

/** WCAG 2.2, "contrast ratio". */
const contrast = (a: string, b: string): number => {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
};

const HIERARCHIES = ['units', 'tens', 'hundreds'];
/** Text on its ground: at least 4.5 (1.4.3). */
const TEXT: [string, string][] = [
  ...['page', 'surface', 'cloth', 'tray', 'tile-below', 'tile-beside', ...HIERARCHIES].map(
    (ground): [string, string] => ['ink', ground],
  ),
  ['soft', 'page'],
  ['soft', 'surface'],
  ['soft', 'tray'],
  ['on-action', 'action'],
  ['page', 'ink'],
  ['again', 'again-tint'],
  ['again', 'page'],
  ...HIERARCHIES.map((name): [string, string] => [`${name}-edge`, name]),
];
/** Edges and states: at least 3 (1.4.11). */
const EDGES: [string, string][] = [
  ...HIERARCHIES.flatMap((name): [string, string][] => [
    [`${name}-edge`, name],
    [`${name}-edge`, 'cloth'],
    ['bead-line', name],
    ['focus', name],
    ['again', name],
  ]),
  ['line', 'page'],
  ['line', 'surface'],
  ['line', 'tray'],
  ['line', 'tile-beside'],
  ['focus', 'page'],
  ['focus', 'surface'],
  ['focus', 'gap'],
  ['action', 'page'],
  ['action', 'tray'],
  ['again', 'tile-below'],
  ['again', 'tile-beside'],
  ['bead-line', 'surface'],
];
const BEADS = Array.from({ length: 10 }, (_, i) => `bead-${i + 1}`);

describe('the formula', () => {
  it('gives the ratios that WCAG gives: 21 for black on white, 4.54 for #767676 on white', () => {
    expect(contrast('#000000', '#ffffff')).toBe(21);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });
});

describe.each([
  ['light', light],
  ['dark', dark],
  ['light, high contrast', lightMore],
  ['dark, high contrast', darkMore],
])('the tokens in %s', (name, tokens) => {
  const ratio = (a: string, b: string) => contrast(tokens[a] ?? '', tokens[b] ?? '');

  it.each(TEXT)(
    'can be read (WCAG 2.2, 1.4.3; 1.4.6 in high contrast): %s on %s',
    (text, ground) => {
      expect(ratio(text, ground)).toBeGreaterThanOrEqual(name.includes('high') ? 7 : 4.5);
    },
  );

  it.each(EDGES)('can be told apart (WCAG 2.2, 1.4.11): %s beside %s', (edge, ground) => {
    expect(ratio(edge, ground)).toBeGreaterThanOrEqual(3);
  });

  it.each(BEADS)('show each bead by its outline or its fill on every cloth: %s', (bead) => {
    for (const cloth of HIERARCHIES)
      for (const scheme of [{}, ...Object.values(SCHEMES)]) {
        const fill = { ...tokens, ...scheme }[bead] ?? '';
        const shown = Math.max(contrast(fill, tokens[cloth] ?? ''), ratio('bead-line', cloth));
        expect(shown).toBeGreaterThanOrEqual(3);
      }
  });
});

describe('in forced colours', () => {
  const forced = media.find((m) => m.trim().startsWith('(forced-colors: active) {')) ?? '';

  it.each(Object.keys(light))('%s is a colour that the reader has chosen', (token) => {
    const system = '(Canvas|CanvasText|ButtonFace|ButtonText|Highlight)';
    expect(forced).toMatch(new RegExp(`--${token}: ${system};`));
  });

  it('keeps the weave, which is then the only sign of a place on its square', () => {
    expect(forced).toContain('forced-color-adjust: none');
    expect(Number(/--thread-weight: (\d+)%/.exec(forced)?.[1])).toBeGreaterThanOrEqual(30);
  });
});
