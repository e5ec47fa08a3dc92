import { browserSurroundings } from './surroundings.ts';
import { PwWork } from './work-page.ts';
import { openWork } from './work-store.ts';

/** The child's page on the work of the session, or the code of what stands in its way; `leave` leads back to where a trial was begun. */
export const startWorkPage = async (
  leave: (() => void) | null,
): Promise<{ element: HTMLElement } | { code: string }> => {
  const element = new PwWork();
  const opened = await openWork(browserSurroundings(), element.refresh);
  if ('code' in opened) return opened;
  const { store } = opened;
  element.store = store;
  element.leave = leave;
  addEventListener('online', () => store.networkBack());
  addEventListener('pagehide', () => store.leave());
  return { element };
};
