import { css } from 'lit';
import type { Problem } from '../../engine/child.ts';
import type { Attempt, sendActions } from '../api/attempt.ts';
import { BEADS } from '../ui/beads.ts';
import { loadStages } from '../work/stages.ts';
import { later } from '../work/surroundings.ts';
import { PwWork } from '../work/work-page.ts';
import { WorkStore } from '../work/work-store.ts';

/** The child's own page on a mat that nobody keeps or marks: nothing is said of saving, because nothing is saved. */
class PwOpenMat extends PwWork {
  static override styles = [
    ...PwWork.styles,
    css`
      .saving {
        display: none;
      }
      /* Room for the page's own buttons below. */
      .page {
        height: calc(100dvh - 60px);
      }
    `,
  ];
}

customElements.define('pw-open-mat', PwOpenMat);

const nobodys = (): Attempt => ({
  id: 'presentation',
  title: '',
  person: '',
  problems: [],
  choices: [],
  beads: BEADS[0],
  length: 0,
  actions: [],
  trial: false,
  graded: false,
  release: 'onFinish',
});

/** Takes every action as the server would, and forgets it. */
const forget: typeof sendActions = async (_id, base, actions) => ({
  ok: true,
  value: {
    length: base + actions.length,
    acknowledged: Object.fromEntries(actions.map(({ client, n }) => [client, n])),
    aside: [],
    finished: false,
  },
});

/** A mat on which the teacher lays bars by hand before the class; its stage must be loaded. */
export const openMat = (problem: Problem): HTMLElement => {
  const element = new PwOpenMat();
  const around = {
    storage: null,
    open: async () => ({ ok: true as const, value: { attempt: nobodys() } }),
    send: forget,
    later,
    prepare: loadStages,
    now: Date.now,
    elapsed: () => performance.now(),
  };
  element.store = new WorkStore(nobodys(), [problem], around, element.refresh);
  return element;
};
