import { describe, expect, it } from 'vitest';
import { STAGES } from '../../../engine/index.ts';
import { bookWith } from '../../support/attempt-book.ts';
import { childRuns } from '../child-runs.ts';
import { presentationOf } from '../presented-work.ts';
import { browsingForFile } from './browsing.ts';
import { type Engine, lacking } from './engines.ts';

const WIDE = { stage: 'record', multiplicand: '934', multiplier: '314' } as const;

/** How much of the mat its frame hides, across and down. Runs inside the browser. */
const frameOfMat = () => {
  let grid: Element | null = null;
  const look = (root: Document | ShadowRoot): void => {
    for (const one of root.querySelectorAll('*')) {
      if (one.getAttribute('role') === 'grid') grid = one;
      if (one.shadowRoot !== null) look(one.shadowRoot);
    }
  };
  look(document);
  const frame = (grid as Element | null)?.closest('.frame');
  if (!frame) throw new Error('no mat');
  const { scrollWidth, clientWidth, scrollHeight, clientHeight } = frame;
  return { across: scrollWidth > clientWidth, down: scrollHeight - clientHeight };
};

/** Every stage worked in one engine; where it is missing, one test that says so in its name. */
export const stagesIn = (engine: Engine): void => {
  const reason = lacking(engine);
  if (reason !== null) {
    it.skip(`every stage in ${engine.name}: ${reason}`);
    return;
  }
  describe(`in ${engine.name}`, () => {
    const browsing = browsingForFile(engine);
    for (const stage of STAGES) childRuns(stage, browsing);

    it('shows a mat that is too wide by moving it sideways only', async () => {
      const all = presentationOf(WIDE);
      const before = all.slice(0, all.findIndex(({ do: what }) => what === 'write') + 1);
      browsing.server.books.set('wide', bookWith('wide', WIDE, before));
      const { page } = await browsing.visit('wide', { width: 820, height: 600 });
      await page.getByRole('grid').waitFor();
      const hidden = () => page.evaluate(frameOfMat);
      await expect.poll(hidden).toEqual({ across: true, down: 0 });
    });
  });
};
