import type { Box, Size } from './paper.ts';

/** A thing with its place on a sheet. */
export type Placed<T> = T & { readonly x: number; readonly y: number };

/**
 * Lays things side by side from the upper left, in their order, without gaps: neighbours share one cut.
 * Each page is a list of placed things.
 */
export const flow = <T extends Size>(things: readonly T[], area: Box): Placed<T>[][] => {
  const pages: Placed<T>[][] = [[]];
  let [x, y, high] = [area.x, area.y, 0];
  for (const thing of things) {
    if (x + thing.width > area.x + area.width + 1e-6) [x, y, high] = [area.x, y + high, 0];
    if (y + thing.height > area.y + area.height + 1e-6) {
      pages.push([]);
      [x, y, high] = [area.x, area.y, 0];
    }
    pages.at(-1)?.push({ ...thing, x, y });
    x += thing.width;
    high = Math.max(high, thing.height);
  }
  return pages.filter((page) => page.length > 0);
};
