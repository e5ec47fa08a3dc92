import { loadStage, type Stage } from '../../engine/child.ts';
import { keepPage } from './pages.ts';
import type { StagePage } from './tool.ts';

/** Where the page of each stage is put together. */
const FILES: Readonly<Record<Stage, () => Promise<StagePage>>> = {
  walk: async () => (await import('./stages/walk.ts')).walk,
  build: async () => (await import('./stages/build.ts')).build,
  bars1: async () => (await import('./stages/bars.ts')).bars,
  bars: async () => (await import('./stages/bars.ts')).bars,
  facts: async () => (await import('./stages/facts.ts')).facts,
  record: async () => (await import('./stages/record.ts')).record,
  cells: async () => (await import('./stages/cells.ts')).cells,
  paper: async () => (await import('./stages/paper.ts')).paper,
  open: async () => (await import('./stages/open.ts')).open,
};

const load = async (stage: Stage): Promise<void> => {
  const [page] = await Promise.all([FILES[stage](), loadStage(stage)]);
  keepPage(stage, page);
};

/** Fetches what work at these stages needs, rules and page; false when the network does not give it. */
export const loadStages = async (stages: readonly Stage[]): Promise<boolean> =>
  (await Promise.allSettled([...new Set(stages)].map(load))).every(
    ({ status }) => status === 'fulfilled',
  );
