import type { Attempt } from '../api/attempt.ts';
import { showBeads } from '../ui/beads.ts';
import { browserSurroundings } from './surroundings.ts';
import { PwWork } from './work-page.ts';
import { openWork, type WorkStore, workOn } from './work-store.ts';

/** What leads away from the page: back to where a trial was begun, and to a tab where this frame may forget. */
type Ways = Pick<PwWork, 'leave' | 'notice'>;
type Started = { readonly element: HTMLElement } | { readonly code: string };

/** The child's page on the work of the session, or the code of what stands in its way. */
export const startWorkPage = async (ways: Ways): Promise<Started> => {
  const element = new PwWork();
  const opened = await openWork(browserSurroundings(), element.refresh);
  if ('toChoose' in opened) return { element: await choosing(opened.toChoose, ways) };
  return 'code' in opened ? opened : { element: ready(element, opened.store, ways) };
};

/** What the window tells reaches the store for as long as its page is shown, and no longer. */
const listenFor = (element: PwWork, store: WorkStore): void => {
  const networkBack = () => store.networkBack();
  const leave = () => store.leave();
  element.addController({
    hostConnected: () => {
      addEventListener('online', networkBack);
      addEventListener('pagehide', leave);
    },
    hostDisconnected: () => {
      removeEventListener('online', networkBack);
      removeEventListener('pagehide', leave);
    },
  });
};

const ready = (element: PwWork, store: WorkStore, ways: Ways): PwWork => {
  listenFor(element, store);
  showBeads(store.attempt.beads);
  return Object.assign(element, { store, ...ways });
};

/** The start screen; the work takes its place once it is chosen. */
const choosing = async (attempt: Attempt, ways: Ways): Promise<HTMLElement> => {
  const { PwChoice } = await import('./choice.ts');
  const choice = Object.assign(new PwChoice(), { attempt });
  choice.begin = async (chosen, sentence) => {
    const element = new PwWork();
    const opened = await workOn(chosen, browserSurroundings(), element.refresh);
    if (!('store' in opened)) return false;
    element.first = sentence;
    choice.replaceWith(ready(element, opened.store, ways));
    return true;
  };
  return choice;
};
