import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Axe {
  run(on: Document): Promise<{
    violations: { id: string; nodes: { html: string; failureSummary: string }[] }[];
  }>;
}

/** What axe finds on a page as it stands: a line a place, none when all is well. */
const violationsNow = async (page: Page): Promise<string[]> => {
  // Through the debugger, because the page's own policy lets no foreign script in.
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const found = await (window as unknown as { axe: Axe }).axe.run(document);
    return found.violations.flatMap(({ id, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
    );
  });
};

const LOOKS = (['light', 'dark'] as const).flatMap((colorScheme) =>
  (['no-preference', 'more'] as const).map((contrast) => ({ colorScheme, contrast })),
);

/** What axe finds in light and in dark, each as usual and in high contrast. */
export const violations = async (page: Page): Promise<string[]> => {
  const found: string[] = [];
  for (const look of LOOKS) {
    await page.emulateMedia(look);
    const here = await violationsNow(page);
    found.push(...here.map((line) => `${look.colorScheme}, contrast ${look.contrast}: ${line}`));
  }
  return found;
};
